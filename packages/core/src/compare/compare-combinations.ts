import type { GriddedCurve } from '../pull/index.ts';
import { speedRange } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import { combinationOnNodes, hasPower, withAverages } from './combination-on-nodes.ts';
import { commonWindow, type WindowNodes } from './common-window.ts';
import { holes, leftOut, noOverlap, tapDiffers, tapMoved, wideSteps } from './comparison-remarks.ts';
import { countedPulls } from './condition.ts';
import { conditionsOf } from './conditions.ts';
import { gainOf } from './gain.ts';
import type {
  ComparedCombination,
  ComparedInput,
  CompareOptions,
  Comparison,
  ConditionDifference,
  Gain,
} from './model.ts';
import { commonNodesRpm, commonWidthRpm } from './nodes.ts';
import { inOneStandard, viewedWith } from './one-standard.ts';

/**
 * Two or more combinations with their counted pulls, side by side in one standard and one bin width: mean curves, peaks,
 * averages over the common window, gains over the baseline (the first input unless `baselineKey` says otherwise), and every
 * condition in which the pulls differ. Bands and verdicts are left `null`. All SI, engine speed in r/min.
 *
 * Pulls without a power curve (a printed peak, a file without torque) stay in the list but not in the mean.
 *

 */
export function compareCombinations(
  inputs: readonly ComparedInput[],
  options: CompareOptions = {},
): Comparison {
  const remarks: Remark[] = [];
  const curvesOnly = inputs.map((input) => ({
    ...input,
    pulls: input.pulls.filter(({ view }) => hasPower(view)),
  }));
  remarks.push(...leftOut(inputs));
  const standard = inOneStandard(curvesOnly);
  remarks.push(...standard.remarks);
  const binWidthRpm = widthOf(standard.inputs);
  const ready = standard.inputs.map((input) => ({
    ...input,
    pulls: input.pulls.map((entry) =>
      entry.view.curve!.kindOfRows === 'points' ? entry : viewedWith(entry, { binWidthRpm }),
    ),
  }));
  const nodesRpm = commonNodesRpm(curvesOf(ready), binWidthRpm);
  const onNodes = inputs.map((input, index) => {
    const withCurves = ready[index]!;
    const combination = combinationOnNodes(withCurves.pulls.length > 0 ? withCurves : input, nodesRpm);
    return { ...combination, pullIds: input.pulls.map(({ pull }) => pull.id) };
  });
  remarks.push(...wideSteps(ready));

  const powers = onNodes.flatMap(
    (combination) => combination.channels.get('power')?.pulls.map((pull) => pull.values) ?? [],
  );
  const window = commonWindow(powers);
  if (window === null && powers.length > 1) remarks.push(noOverlap(ready));
  if (window !== null) remarks.push(...holes(onNodes, nodesRpm, window));
  const commonWindowRpm: Comparison['commonWindowRpm'] =
    window === null ? null : [nodesRpm[window.firstNode]!, nodesRpm[window.lastNode]!];
  const averages = averagesWindow(commonWindowRpm, options.averagesWindowRpm ?? null);
  remarks.push(...averages.remarks);
  const averaged = averagedNodes(onNodes, nodesRpm, averages.windowRpm);
  const combinations = onNodes.map((combination) => withAverages(combination, averaged));

  const counted = countedPulls(ready);
  const conditions = conditionsOf(counted, countedPulls(curvesOnly), commonWindowRpm, options.cells ?? []);
  const gains =
    window === null ? [] : gainsOf(combinations, options, { nodesRpm, window, averaged }, conditions);
  if (gains.length > 0) remarks.push(...tapMoved(conditions));
  return {
    correction: standard.correction,
    binWidthRpm,
    engineSpeedRpm: nodesRpm,
    commonWindowRpm,
    averagesWindowRpm: averages.windowRpm,
    combinations,
    gains,
    peakGains: [],
    trends: [],
    conditions,
    remarks,
  };
}

function gainsOf(
  combinations: readonly ComparedCombination[],
  options: CompareOptions,
  on: { nodesRpm: Float64Array; window: WindowNodes; averaged: readonly number[] },
  conditions: readonly ConditionDifference[],
): Gain[] {
  const baselineKey = options.baselineKey === undefined ? combinations[0]?.key : options.baselineKey;
  const baseline = combinations.find((combination) => combination.key === baselineKey);
  if (baseline === undefined || !baseline.channels.has('power')) return [];
  const boostComparable = !tapDiffers(conditions);
  return combinations.flatMap((changed) => {
    if (changed.key === baseline.key || !changed.channels.has('power')) return [];
    return gainOf({ baseline, changed, boostComparable, ...on }) ?? [];
  });
}

const curvesOf = (inputs: readonly ComparedInput[]): GriddedCurve[] =>
  inputs.flatMap((input) => input.pulls.map(({ view }) => view.curve!));

const widthOf = (inputs: readonly ComparedInput[]): number => {
  const curves = curvesOf(inputs);
  return curves.length === 0 ? 0 : commonWidthRpm(curves);
};

function averagesWindow(
  common: readonly [number, number] | null,
  asked: readonly [number, number] | null,
): { windowRpm: Comparison['averagesWindowRpm']; remarks: Remark[] } {
  if (common === null) return { windowRpm: null, remarks: [] };
  if (asked === null) return { windowRpm: [common[0], common[1]], remarks: [] };
  const clipped: [number, number] = [Math.max(common[0], asked[0]), Math.min(common[1], asked[1])];
  const askedText = speedRange(asked[0], asked[1]);
  const commonText = speedRange(common[0], common[1]);
  if (clipped[0] > clipped[1])
    return {
      windowRpm: [common[0], common[1]],
      remarks: [
        remark(
          'caution',
          'averages-window-missed',
          said`The averages were asked for over ${askedText}, where not all pulls reach; they are over the common window, ${commonText}.`,
        ),
      ],
    };
  if (clipped[0] === asked[0] && clipped[1] === asked[1]) return { windowRpm: clipped, remarks: [] };
  return {
    windowRpm: clipped,
    remarks: [
      remark(
        'note',
        'averages-window-clipped',
        said`The averages were asked for over ${askedText}; all pulls share only ${commonText}, so they are over ${speedRange(clipped[0], clipped[1])}.`,
      ),
    ],
  };
}

/** Nodes of the averages: in the window, with a figure of every combination, so that all averages stand on the same speeds. */
function averagedNodes(
  combinations: readonly ComparedCombination[],
  nodesRpm: Float64Array,
  windowRpm: readonly [number, number] | null,
): number[] {
  if (windowRpm === null) return [];
  const powers = combinations.flatMap((combination) => combination.channels.get('power')?.mean ?? []);
  return Array.from(nodesRpm.keys()).filter(
    (node) =>
      nodesRpm[node]! >= windowRpm[0] &&
      nodesRpm[node]! <= windowRpm[1] &&
      powers.every((power) => Number.isFinite(power[node]!)),
  );
}
