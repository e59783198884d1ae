import { type PullView, WIDEST_JOINED_STEP_RPM } from '../pull/index.ts';
import { speedFigure, speedRange } from '../quantity/index.ts';
import { joined, type Remark, remark, said, saidIn } from '../remark/index.ts';
import { hasPower } from './combination-on-nodes.ts';
import { holesIn, type WindowNodes } from './common-window.ts';
import { countedPulls } from './condition.ts';
import type { ComparedCombination, ComparedInput, ConditionDifference } from './model.ts';

/** Whether counted pulls have their boost taps noted at different places. */
export const tapDiffers = (conditions: readonly ConditionDifference[]): boolean =>
  conditions.some((condition) => condition.id === 'boost-tap' && condition.state === 'differs');

/** Pulls that cannot enter a curve. */
export function leftOut(inputs: readonly ComparedInput[]): Remark[] {
  return inputs.flatMap(({ key, pulls }) =>
    pulls.flatMap(({ pull, view }) =>
      hasPower(view)
        ? []
        : [
            remark(
              'caution',
              'pull-without-curve',
              pull.form === 'summary'
                ? `"${pull.name}" (${key}) is a printed or remembered peak without a curve: it cannot be compared over engine speed.`
                : said`"${pull.name}" (${key}) has no power curve and is left out: ${whyNone(view)}`,
            ),
          ],
    ),
  );
}

function whyNone({ remarks }: PullView) {
  const refusal = remarks.find((one) => one.level === 'refusal');
  return refusal ? saidIn(refusal) : 'no row has a figure.';
}

/** Settled points with rows too far apart to be joined. */
export function wideSteps(inputs: readonly ComparedInput[]): Remark[] {
  return countedPulls(inputs).flatMap(({ pull, view }) => {
    const speeds = view.curve!.engineSpeedRpm;
    if (view.curve!.kindOfRows !== 'points') return [];
    const gaps = Array.from(speeds.subarray(1)).flatMap((speed, row) =>
      speed - speeds[row]! > WIDEST_JOINED_STEP_RPM ? [speedRange(speeds[row]!, speed, ' to ')] : [],
    );
    if (gaps.length === 0) return [];
    return [
      remark(
        'caution',
        'rows-too-far-apart',
        said`"${pull.name}" has no row from ${joined(gaps, ', nor from ')}. Rows more than ${speedFigure(WIDEST_JOINED_STEP_RPM)} apart are not joined, so nothing is compared there.`,
      ),
    ];
  });
}

/** Pulls with the same power at the same speeds to the last digit: no two pulls are that alike. */
export function enteredTwice(inputs: readonly ComparedInput[]): Remark[] {
  const seen = new Map<string, string[]>();
  for (const { pull, view } of countedPulls(inputs)) {
    const { engineSpeedRpm, channels } = view.curve!;
    const figures = [...engineSpeedRpm, ...channels.get('power')!].join(' ');
    seen.set(figures, [...(seen.get(figures) ?? []), pull.name]);
  }
  return [...seen.values()].flatMap((names) =>
    names.length < 2
      ? []
      : [
          remark(
            'caution',
            'entered-twice',
            `${names.map((name) => `"${name}"`).join(' and ')} have the same power at every speed to the last digit, as no two pulls do: one pull seems to be entered ${names.length === 2 ? 'twice' : `${names.length} times`}, which makes the scatter look smaller than it is. Count it once.`,
          ),
        ],
  );
}

/** Nodes inside the common window at which a combination has no figure. */
export function holes(
  combinations: readonly ComparedCombination[],
  nodesRpm: Float64Array,
  window: WindowNodes,
): Remark[] {
  return combinations.flatMap((combination) => {
    const power = combination.channels.get('power');
    const found = power === undefined ? [] : holesIn(power.mean, nodesRpm, window);
    if (found.length === 0) return [];
    const where = found.map(([from, to]) => (from === to ? speedFigure(from) : speedRange(from, to)));
    return [
      remark(
        'caution',
        'hole-in-window',
        said`Combination ${combination.key} has no figure at ${joined(where, ', ')}: left empty, and left out of every average.`,
      ),
    ];
  });
}

export function noOverlap(inputs: readonly ComparedInput[]): Remark {
  const ranges = countedPulls(inputs).map(({ pull, view }) => {
    const [low, high] = view.window!.windowRpm;
    return said`"${pull.name}" ${speedRange(low, high)}`;
  });
  return remark(
    'caution',
    'no-common-window',
    said`The pulls share no engine speed, so there is nothing to compare: ${joined(ranges, ', ')}. Choose pulls that overlap.`,
  );
}

/** Boost taken at different places, so that its change is not stated. */
export function tapMoved(conditions: readonly ConditionDifference[]): Remark[] {
  const tap = conditions.find((condition) => condition.id === 'boost-tap');
  if (tap === undefined || !tapDiffers(conditions)) return [];
  const places = Object.entries(tap.values).map(([key, place]) => `${key}: ${place}`);
  return [
    remark(
      'caution',
      'boost-tap-moved',
      `Boost was taken at different places (${places.join(', ')}), so its change is not stated.`,
    ),
  ];
}
