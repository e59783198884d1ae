import type { Comparison, ConditionDifference, Gain } from '@pullbook/core/compare';
import { interpolateLinear } from '@pullbook/core/numeric';
import type { PullView } from '@pullbook/core/pull';
import { fromInside, writeSaid } from '@pullbook/core/quantity';
import type { VerdictWord } from '@pullbook/core/scatter';
import { comparisonSentence, comparisonVerdictLine, plainText, type ViewOptions } from '@pullbook/views';
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
  /** The answer in a sentence, as the screens say it. */
  sentence: string;
  /** What may be said of the gain, in a line; '' where no scatter is known to judge by. */
  verdictLine: string;
  verdict: VerdictWord | null;
  /** Changed less baseline, average over the averages' window; this is the gain that decides. */
  meanGainKw: number | null;
  meanGainPercent: number | null;
  /** 95 % band of it; every band is `null` where no scatter is known to judge by. */
  meanGainLowKw: number | null;
  meanGainHighKw: number | null;
  meanGainLowPercent: number | null;
  meanGainHighPercent: number | null;
  /** 80 % band. */
  likelyGainLowKw: number | null;
  likelyGainHighKw: number | null;
  /** By two one-sided tests at 5 % no difference is larger. */
  noDifferenceLargerThanPercent: number | null;
  /** Smallest gain that matters. */
  worthwhilePercent: number | null;
  meanGainNm: number | null;
  meanBoostChangeKpa: number | null;
  /** One line a node of the common window; `null` where a counted pull has no figure. Band: 95 %, for all speeds at once. */
  curve: {
    engineSpeedRpm: number;
    baselineKw: number | null;
    changedKw: number | null;
    gainKw: number | null;
    gainLowKw: number | null;
    gainHighKw: number | null;
  }[];
  /** Gain at speeds asked for, between nodes on the straight line. Band: 95 %, for one speed chosen beforehand. */
  at: GainAtSpeed[];
  /** Stretches in which the band for all speeds at once leaves out zero; `sign`: 1 a gain, -1 a loss. */
  clearRanges: { fromRpm: number; toRpm: number; sign: 1 | -1 }[];
  /** Where the gain changes sign, with the speeds between which the pulls cannot tell. */
  crossovers: { atRpm: number; lowRpm: number; highRpm: number }[];
  /** Gain of the highest figures; `null` unless both are peaks, both the last row at one speed, or one a printed figure. */
  peakGain: EdgePeakGain | null;
  /** Scatter as used, after the repeats; `null` without a band. */
  noise: EdgeNoise | null;
  /** `taken-out`: the order of the pulls lets a straight drift cancel. `carried`: it widens the band. */
  drift: { handling: 'taken-out' | 'carried' | 'none'; percentPerHour: number | null } | null;
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
    /** As `label`. */
    name: string;
    baseline: string | null;
    changed: string | null;
    state: string;
    why: string;
    /** As `why`: the limit used, and what it rests on. */
    rule: string;
  }[];
  remarks: EdgeRemark[];
}

export interface GainAtSpeed {
  engineSpeedRpm: number;
  gainKw: number | null;
  gainLowKw: number | null;
  gainHighKw: number | null;
}

interface EdgePeakGain {
  gainKw: number | null;
  gainLowKw: number | null;
  gainHighKw: number | null;
  /** What a printed figure lets be said and what not; `null`: both have a curve. */
  why: string | null;
}

interface EdgeNoise {
  /** Standard deviation between pulls of one set-up, of their average power. */
  pullSigmaPercent: number;
  /** Added by taking apart and putting together. */
  setUpSigmaPercent: number;
  /** Of `pullSigmaPercent`. */
  degreesOfFreedom: number | null;
  /** At least one spread rests on the shop's pulls or on what was stated, and was not set aside. */
  fromHistory: boolean;
  /** The repeats scatter more than history allows, so that it was set aside. */
  historySetAside: boolean;
}

interface EdgePeak {
  peakPowerKw: number | null;
  /** 95 % band of it as these pulls know it. */
  peakPowerLowKw: number | null;
  peakPowerHighKw: number | null;
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
  atRpm: readonly number[] = [],
): CompareReport {
  const words = ({ values, parts }: ConditionDifference, key: string) => {
    const plain = values[key] ?? null;
    return plain === null || options === null ? plain : writeSaid(plain, parts?.[key], options);
  };
  const baseline = comparison.combinations.find((one) => one.key === 'A');
  const changed = comparison.combinations.find((one) => one.key === changedKey);
  const gain = comparison.gains.find((one) => one.changedKey === changedKey);
  const band = gain?.band ?? null;
  const shown = options ?? SI;
  return {
    schemaVersion: 1,
    baseline: baseline?.pullIds ?? [],
    changed: changed?.pullIds ?? [],
    commonWindowRpm: edgeRange(comparison.commonWindowRpm),
    averagesWindowRpm: edgeRange(comparison.averagesWindowRpm),
    sentence: plainText(comparisonSentence(comparison, changedKey, {}, shown)),
    verdictLine: comparisonVerdictLine(comparison, changedKey, {}, shown),
    verdict: gain?.verdict?.word ?? null,
    meanGainKw: gain ? kilowatts(gain.meanPower) : null,
    meanGainPercent: percent(gain?.meanPowerRatio),
    meanGainLowKw: kilowatts(band?.meanPower[0]),
    meanGainHighKw: kilowatts(band?.meanPower[1]),
    meanGainLowPercent: percent(band?.meanPowerRatio[0]),
    meanGainHighPercent: percent(band?.meanPowerRatio[1]),
    likelyGainLowKw: kilowatts(band?.likelyPower[0]),
    likelyGainHighKw: kilowatts(band?.likelyPower[1]),
    noDifferenceLargerThanPercent: percent(gain?.verdict?.noDifferenceLargerThan),
    worthwhilePercent: percent(gain?.verdict?.worthwhileRatio),
    meanGainNm: edgeNumber(gain?.meanTorque),
    meanBoostChangeKpa:
      gain?.meanBoost == null ? null : edgeNumber(fromInside(gain.meanBoost, 'kPa', 'pressureDifference')),
    curve: commonNodes(comparison).map(({ node, engineSpeedRpm }) => ({
      engineSpeedRpm,
      baselineKw: kilowatts(baseline?.channels.get('power')?.mean[node]),
      changedKw: kilowatts(changed?.channels.get('power')?.mean[node]),
      gainKw: kilowatts(gain?.power[node]),
      gainLowKw: kilowatts(band?.simultaneous.low[node]),
      gainHighKw: kilowatts(band?.simultaneous.high[node]),
    })),
    at: atRpm.map((speed) => gainAt(comparison, gain, speed)),
    clearRanges: band?.clearRanges ?? [],
    crossovers: band?.crossovers ?? [],
    peakGain: peakGainOf(comparison, changedKey, band),
    noise: noiseOf(band),
    drift: driftOf(band),
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
      name: one.label,
      baseline: words(one, 'A'),
      changed: words(one, changedKey),
      state: one.state,
      why: one.why,
      rule: one.why,
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
    peakPowerLowKw: kilowatts(combination?.peakPowerBand?.[0]),
    peakPowerHighKw: kilowatts(combination?.peakPowerBand?.[1]),
    peakPowerRpm: edgeNumber(peak?.atRpm),
    stillClimbing: peak?.stillClimbing ?? false,
  };
}

/** Between nodes on the straight line; nothing outside the common window. */
function gainAt({ engineSpeedRpm }: Comparison, gain: Gain | undefined, speed: number): GainAtSpeed {
  const at = (values: Float64Array | undefined) =>
    kilowatts(values && interpolateLinear(engineSpeedRpm, values, speed));
  return {
    engineSpeedRpm: speed,
    gainKw: at(gain?.power),
    gainLowKw: at(gain?.band?.pointwise.low),
    gainHighKw: at(gain?.band?.pointwise.high),
  };
}

function peakGainOf(
  comparison: Comparison,
  changedKey: string,
  band: Gain['band'],
): CompareReport['peakGain'] {
  const printed = comparison.peakGains.find((one) => one.changedKey === changedKey);
  const figures = band?.peakPower ?? printed;
  if (!figures) return null;
  const { gain, low, high } = figures;
  const why = band?.peakPower ? null : (printed?.why ?? null);
  return { gainKw: kilowatts(gain), gainLowKw: kilowatts(low), gainHighKw: kilowatts(high), why };
}

function noiseOf(band: Gain['band']): EdgeNoise | null {
  if (band === null) return null;
  const { spreads, fromHistory } = band.scatter;
  return {
    pullSigmaPercent: fromInside(spreads.pull.sigma, '%', 'ratio'),
    setUpSigmaPercent: fromInside(spreads.setUp.sigma, '%', 'ratio'),
    degreesOfFreedom: edgeNumber(spreads.pull.degreesOfFreedom),
    fromHistory,
    historySetAside: spreads.pull.historySetAside,
  };
}

function driftOf(band: Gain['band']): CompareReport['drift'] {
  if (band === null) return null;
  const { handling, perHour } = band.scatter.drift;
  return { handling, percentPerHour: percent(perHour) };
}

/** Words of the JSON, where no units were chosen. */
const SI: ViewOptions = { units: 'si', decimalMark: '.' };

const percent = (ratio: number | null | undefined): number | null =>
  ratio == null ? null : edgeNumber(fromInside(ratio, '%', 'ratio'));

const kilowatts = (watts: number | undefined): number | null =>
  watts === undefined ? null : edgeNumber(fromInside(watts, 'kW', 'power'));
