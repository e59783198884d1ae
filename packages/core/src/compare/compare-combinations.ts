import type { GriddedCurve } from '../pull/index.ts';
import type { Remark } from '../remark/index.ts';
import { averagedNodes, averagesWindow } from './averages-window.ts';
import { combinationOnNodes, hasPower, withAverages } from './combination-on-nodes.ts';
import { commonWindow, type WindowNodes } from './common-window.ts';
import {
  enteredTwice,
  holes,
  leftOut,
  noOverlap,
  tapDiffers,
  tapMoved,
  wideSteps,
} from './comparison-remarks.ts';
import { countedPulls } from './condition.ts';
import { conditionsOf } from './conditions.ts';
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
import { peakPowerBand } from './peak-bands.ts';
import { peakGainsOf } from './peak-gains.ts';
import { type Judged, judged, judgedGain } from './with-verdict.ts';

/**
 * Two or more combinations with their counted pulls, side by side in one standard and one bin width: mean curves, peaks,
 * averages over the common window, gains over the baseline (the first input unless `baselineKey` says otherwise), and every
 * condition in which the pulls differ; with a history of scatter also bands and verdicts. All SI, engine speed in r/min.
 *
 * Pulls without a power curve (a printed peak, a file without torque) stay in the list but not in the mean.
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
  const standard = inOneStandard(curvesOnly, options.viewed);
  remarks.push(...standard.remarks);
  const binWidthRpm = widthOf(standard.inputs);
  const ready = standard.inputs.map((input) => ({
    ...input,
    pulls: input.pulls.map((entry) =>
      entry.view.curve!.kindOfRows === 'points' ? entry : viewedWith(entry, { binWidthRpm }, options.viewed),
    ),
  }));
  const nodesRpm = commonNodesRpm(curvesOf(ready), binWidthRpm);
  const onNodes = inputs.map((input, index) => {
    const withCurves = ready[index]!;
    const combination = combinationOnNodes(withCurves.pulls.length > 0 ? withCurves : input, nodesRpm);
    return { ...combination, pullIds: input.pulls.map(({ pull }) => pull.id) };
  });
  remarks.push(...wideSteps(ready), ...enteredTwice(ready));

  const powers = onNodes.flatMap(
    (combination) => combination.channels.get('power')?.pulls.map((pull) => pull.values) ?? [],
  );
  const window = commonWindow(powers);
  if (window === null && powers.length > 1) remarks.push(noOverlap(ready));
  if (window !== null) remarks.push(...holes(onNodes, nodesRpm, window));
  const commonWindowRpm: Comparison['commonWindowRpm'] =
    window === null ? null : [nodesRpm[window.firstNode]!, nodesRpm[window.lastNode]!];
  const compared = averagedNodes(onNodes, nodesRpm, commonWindowRpm).map((node) => nodesRpm[node]!);
  const averages = averagesWindow(commonWindowRpm, options.averagesWindowRpm ?? null, compared);
  remarks.push(...averages.remarks);
  const averaged = averagedNodes(onNodes, nodesRpm, averages.windowRpm);
  const averagedCombinations = onNodes.map((combination) => withAverages(combination, averaged));

  const baselineKey = options.baselineKey === undefined ? (inputs[0]?.key ?? null) : options.baselineKey;
  const history = options.history ?? null;
  const { judgement, ...judging } = judged(
    ready,
    averagedCombinations,
    { nodesRpm, windowRpm: averages.windowRpm, averaged },
    { ...options, baselineKey, history },
  );
  const combinations =
    judgement === null
      ? averagedCombinations
      : averagedCombinations.map((combination) => ({
          ...combination,
          peakPowerBand: peakPowerBand(combination, judgement.scatter),
        }));

  const counted = countedPulls(ready);
  const conditions = conditionsOf(
    counted,
    countedPulls(curvesOnly),
    commonWindowRpm,
    options.cells ?? [],
    options.beside,
  );
  const gains =
    window === null
      ? []
      : gainsOf(
          combinations,
          { baselineKey, worthwhile: options.worthwhile },
          { nodesRpm, window, averaged },
          judgement,
          conditions,
        );
  remarks.push(...gains.flatMap((one) => one.remarks));
  if (gains.length > 0) remarks.push(...tapMoved(conditions), ...judging.remarks);
  return {
    correction: standard.correction,
    binWidthRpm,
    engineSpeedRpm: nodesRpm,
    commonWindowRpm,
    averagesWindowRpm: averages.windowRpm,
    combinations,
    gains: gains.map(({ gain }) => gain),
    peakGains:
      history === null ? [] : peakGainsOf(inOneFooting(inputs, ready), combinations, baselineKey, history),
    trends: judgement?.scatter.trends ?? [],
    conditions,
    remarks,
  };
}

function gainsOf(
  combinations: readonly ComparedCombination[],
  { baselineKey, worthwhile }: { baselineKey: string | null; worthwhile: number | undefined },
  on: { nodesRpm: Float64Array; window: WindowNodes; averaged: readonly number[] },
  judgement: Judged | null,
  conditions: readonly ConditionDifference[],
): { gain: Gain; remarks: Remark[] }[] {
  const baseline = combinations.find((combination) => combination.key === baselineKey);
  if (baseline === undefined || !baseline.channels.has('power')) return [];
  const boostComparable = !tapDiffers(conditions);
  return combinations.flatMap((changed) => {
    if (changed.key === baseline.key || !changed.channels.has('power')) return [];
    return judgedGain({ baseline, changed, boostComparable, ...on }, judgement, worthwhile) ?? [];
  });
}

/** Curves as they were brought to one standard; printed figures as they are. */
const inOneFooting = (inputs: readonly ComparedInput[], ready: readonly ComparedInput[]): ComparedInput[] =>
  inputs.map((input, place) => (ready[place]!.pulls.length > 0 ? ready[place]! : input));

const curvesOf = (inputs: readonly ComparedInput[]): GriddedCurve[] =>
  inputs.flatMap((input) => input.pulls.map(({ view }) => view.curve!));

const widthOf = (inputs: readonly ComparedInput[]): number => {
  const curves = curvesOf(inputs);
  return curves.length === 0 ? 0 : commonWidthRpm(curves);
};
