import type { Comparison, ConditionDifference } from '@pullbook/core/compare';
import type { PullView } from '@pullbook/core/pull';
import { fromInside, writeSaid } from '@pullbook/core/quantity';
import type { ViewOptions } from '@pullbook/views';
import { edgeNumber, edgeRange } from './number.ts';
import { type EdgeCorrection, edgeCorrection } from './pull-figures.ts';
import { type EdgeRemark, edgeRemarks } from './remark.ts';

/** A changed combination against its baseline, as it leaves the program: kW, N·m, kPa, r/min. */
export interface CompareReport {
  schemaVersion: 1;
  baseline: string[];
  changed: string[];
  commonWindowRpm: [number, number] | null;
  averagesWindowRpm: [number, number] | null;
  /** Changed less baseline, average over the averages' window; this is the gain that decides. */
  meanGainKw: number | null;
  meanGainPercent: number | null;
  meanGainNm: number | null;
  meanBoostChangeKpa: number | null;
  /** One line a node of the common window; `null` where a counted pull has no figure. */
  curve: {
    engineSpeedRpm: number;
    baselineKw: number | null;
    changedKw: number | null;
    gainKw: number | null;
  }[];
  baselinePeak: EdgePeak;
  changedPeak: EdgePeak;
  /** Standard deviation of the repeats' average power as a share of it; `null` with one pull. */
  baselineRepeatSpread: number | null;
  changedRepeatSpread: number | null;
  /** `factors`: of each pull; empty where the standard asked for was not reached and pulls stand as recorded. */
  correction: EdgeCorrection & { factors: { pullId: string; factor: number | null }[] };
  conditions: {
    id: string;
    label: string;
    baseline: string | null;
    changed: string | null;
    state: string;
    why: string;
  }[];
  remarks: EdgeRemark[];
}

interface EdgePeak {
  peakPowerKw: number | null;
  peakPowerRpm: number | null;
  stillClimbing: boolean;
}

/**
 * The report of one changed combination (`changedKey`) against `A`. Its words are in SI, as the JSON has them, or in the
 * units a person chose.
 */
export function compareReport(
  comparison: Comparison,
  changedKey: string,
  views: PullView[],
  options: ViewOptions | null = null,
): CompareReport {
  const words = ({ values, parts }: ConditionDifference, key: string) => {
    const plain = values[key] ?? null;
    return plain === null || options === null ? plain : writeSaid(plain, parts?.[key], options);
  };
  const baseline = comparison.combinations.find((one) => one.key === 'A');
  const changed = comparison.combinations.find((one) => one.key === changedKey);
  const gain = comparison.gains.find((one) => one.changedKey === changedKey);
  return {
    schemaVersion: 1,
    baseline: baseline?.pullIds ?? [],
    changed: changed?.pullIds ?? [],
    commonWindowRpm: edgeRange(comparison.commonWindowRpm),
    averagesWindowRpm: edgeRange(comparison.averagesWindowRpm),
    meanGainKw: gain ? kilowatts(gain.meanPower) : null,
    meanGainPercent: gain ? edgeNumber(fromInside(gain.meanPowerRatio, '%', 'ratio')) : null,
    meanGainNm: edgeNumber(gain?.meanTorque),
    meanBoostChangeKpa:
      gain?.meanBoost == null ? null : edgeNumber(fromInside(gain.meanBoost, 'kPa', 'pressureDifference')),
    curve: commonNodes(comparison).map(({ node, engineSpeedRpm }) => ({
      engineSpeedRpm,
      baselineKw: kilowatts(baseline?.channels.get('power')?.mean[node]),
      changedKw: kilowatts(changed?.channels.get('power')?.mean[node]),
      gainKw: kilowatts(gain?.power[node]),
    })),
    baselinePeak: edgePeak(baseline),
    changedPeak: edgePeak(changed),
    baselineRepeatSpread: edgeNumber(baseline?.repeatSpread),
    changedRepeatSpread: edgeNumber(changed?.repeatSpread),
    correction: {
      ...edgeCorrection(comparison.correction),
      factors: comparison.correction.reached
        ? views.map((view) => ({ pullId: view.pullId, factor: edgeNumber(view.correction.factor) }))
        : [],
    },
    conditions: comparison.conditions.map((one) => ({
      id: one.id,
      label: one.label,
      baseline: words(one, 'A'),
      changed: words(one, changedKey),
      state: one.state,
      why: one.why,
    })),
    remarks: edgeRemarks(comparison.remarks, null, options),
  };
}

function commonNodes(comparison: Comparison): { node: number; engineSpeedRpm: number }[] {
  const window = comparison.commonWindowRpm;
  if (!window) return [];
  return [...comparison.engineSpeedRpm]
    .map((engineSpeedRpm, node) => ({ node, engineSpeedRpm }))
    .filter(({ engineSpeedRpm }) => engineSpeedRpm >= window[0] && engineSpeedRpm <= window[1]);
}

function edgePeak(combination: Comparison['combinations'][number] | undefined): EdgePeak {
  const peak = combination?.peakPower ?? null;
  return {
    peakPowerKw: kilowatts(peak?.value),
    peakPowerRpm: edgeNumber(peak?.atRpm),
    stillClimbing: peak?.stillClimbing ?? false,
  };
}

const kilowatts = (watts: number | undefined): number | null =>
  watts === undefined ? null : edgeNumber(fromInside(watts, 'kW', 'power'));
