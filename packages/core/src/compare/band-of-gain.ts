import { mean } from '../numeric/mean.ts';
import {
  clearRanges,
  crossoversWithStretch,
  type GroupGain,
  type ScatterComparison,
  verdictWord,
} from '../scatter/index.ts';
import { aroundGain } from './around-gain.ts';
import type { ComparedCombination, Gain, GainBand, Verdict } from './model.ts';
import { peakPowerGain } from './peak-bands.ts';

export interface BandInput {
  /** As estimated, without its band. */
  gain: Gain;
  ofGroup: GroupGain;
  scatter: ScatterComparison;
  baseline: ComparedCombination;
  changed: ComparedCombination;
  nodesRpm: Float64Array;
  averaged: readonly number[];
  /** What the changed average is taken times; 1: nothing shifts it. */
  shift: number;
}

/**
 * Bands of a gain in W. The scatter room knows them as factors of the changed figures: a half-width h of the logarithm lets
 * them be changed x exp(+-h), so the gain is from gain - changed (1 - exp(-h)) to gain + changed (exp(h) - 1).
 */
export function bandOfGain(input: BandInput): GainBand {
  const { gain, ofGroup, scatter, baseline, changed, nodesRpm, averaged, shift } = input;
  const before = baseline.channels.get('power')!.mean;
  const meanBefore = mean(averaged.map((node) => before[node]!));
  const half95 = ofGroup.critical * ofGroup.standardError;
  const half80 = Math.log1p(ofGroup.likelyHigh) - ofGroup.logGain;
  const meanPower = aroundGain(gain.meanPower, meanBefore, half95);
  const offset = nodesRpm.indexOf(scatter.engineSpeedRpm[0]!);
  const curve = (halves: Float64Array) => {
    const low = new Float64Array(nodesRpm.length).fill(Number.NaN);
    const high = low.slice();
    halves.forEach((half, node) => {
      const at = node + offset;
      [low[at], high[at]] = aroundGain(gain.power[at]!, before[at]!, half);
    });
    return { low, high };
  };
  const pointwise = curve(ofGroup.curve.pointwise);
  const simultaneous = curve(ofGroup.curve.simultaneous);
  const banded = gain.power.map((power, node) =>
    Number.isFinite(pointwise.low[node]!) ? power : Number.NaN,
  );
  return {
    meanPower,
    meanPowerRatio: [meanPower[0] / meanBefore, meanPower[1] / meanBefore],
    likelyPower: aroundGain(gain.meanPower, meanBefore, half80),
    pointwise,
    simultaneous,
    clearRanges: clearRanges(nodesRpm, simultaneous.low, simultaneous.high),
    crossovers: crossoversWithStretch(nodesRpm, banded, pointwise.low, pointwise.high),
    peakPower: peakPowerGain(baseline, changed, ofGroup, scatter, shift),
    scatter,
  };
}

/**
 * What may be said of a gain, with what it rests on. By the bands in W, which are the ones shown: the mean of logarithms differs
 * from the logarithm of means in the fifth digit, which turns a word that hangs on a hair.
 */
export function verdictOf(
  { meanPower, likelyPower, scatter }: GainBand,
  ofGroup: GroupGain,
  baselineKey: string,
  worthwhile: number,
): Verdict {
  const counts = (group: string) => scatter.counts.get(group)!;
  const [before, after] = [counts(baselineKey), counts(ofGroup.group)];
  return {
    word: verdictWord(
      {
        low: meanPower[0],
        high: meanPower[1],
        likelyLow: likelyPower[0],
        likelyHigh: likelyPower[1],
        noDifferenceLargerThan: ofGroup.noDifferenceLargerThan,
      },
      worthwhile,
    ),
    worthwhileRatio: worthwhile,
    noDifferenceLargerThan: ofGroup.noDifferenceLargerThan,
    pulls: { baseline: before.pulls, changed: after.pulls },
    setUps: { baseline: before.setUps, changed: after.setUps },
  };
}
