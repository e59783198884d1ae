import { numberText, speedText, WIDEST_JOINED_STEP_RPM } from '../pull/index.ts';
import { type Remark, remark } from '../remark/index.ts';
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
                : `"${pull.name}" (${key}) has no power curve and is left out: ${view.remarks.find((one) => one.level === 'refusal')?.message ?? 'no row has a figure.'}`,
            ),
          ],
    ),
  );
}

/** Settled points with rows too far apart to be joined. */
export function wideSteps(inputs: readonly ComparedInput[]): Remark[] {
  return countedPulls(inputs).flatMap(({ pull, view }) => {
    const speeds = view.curve!.engineSpeedRpm;
    if (view.curve!.kindOfRows !== 'points') return [];
    const gaps = Array.from(speeds.subarray(1)).flatMap((speed, row) =>
      speed - speeds[row]! > WIDEST_JOINED_STEP_RPM
        ? [`${numberText(speeds[row]!, 0)} to ${speedText(speed)}`]
        : [],
    );
    if (gaps.length === 0) return [];
    return [
      remark(
        'caution',
        'rows-too-far-apart',
        `"${pull.name}" has no row from ${gaps.join(', nor from ')}. Rows more than ${WIDEST_JOINED_STEP_RPM} rpm apart are not joined, so nothing is compared there.`,
      ),
    ];
  });
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
    const where = found.map(([from, to]) =>
      from === to ? speedText(from) : `${numberText(from, 0)}-${speedText(to)}`,
    );
    return [
      remark(
        'caution',
        'hole-in-window',
        `Combination ${combination.key} has no figure at ${where.join(', ')}: left empty, and left out of every average.`,
      ),
    ];
  });
}

export function noOverlap(inputs: readonly ComparedInput[]): Remark {
  const ranges = countedPulls(inputs).map(({ pull, view }) => {
    const [low, high] = view.window!.windowRpm;
    return `"${pull.name}" ${numberText(low, 0)}-${speedText(high)}`;
  });
  return remark(
    'caution',
    'no-common-window',
    `The pulls share no engine speed, so there is nothing to compare: ${ranges.join(', ')}. Choose pulls that overlap.`,
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
