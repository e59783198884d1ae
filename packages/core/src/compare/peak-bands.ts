import { studentTQuantile } from '../numeric/index.ts';
import type { Peak } from '../pull/index.ts';
import {
  equivalentDegreesOfFreedom,
  type GroupGain,
  type KnownVariance,
  type ScatterComparison,
  sumOf,
} from '../scatter/index.ts';
import { aroundGain } from './around-gain.ts';
import type { ComparedCombination, GainBand } from './model.ts';

/** Rows about a fitted top: how well the scatter about it is known (a parabola through some 13 nodes). */
const FIT_DEGREES = 10;
/** Two last rows are at one speed if they differ by less, r/min. */
const SAME_SPEED_RPM = 1;

/**
 * 95 % band of the highest power of a combination's mean curve as its pulls know it, W: scatter of the mean of its pulls, of
 * one speed within them, of the fitted top; between its set-ups and days where it has several, else they are not in it.
 */
export function peakPowerBand(
  { key, peakPower }: ComparedCombination,
  { spreads, counts }: ScatterComparison,
): ComparedCombination['peakPowerBand'] {
  const own = counts.get(key);
  if (peakPower === null || own === undefined) return null;
  const known = (spread: { sigma: number; degreesOfFreedom: number }, times: number): KnownVariance => ({
    variance: spread.sigma ** 2 * times,
    degreesOfFreedom: spread.degreesOfFreedom,
  });
  // A gain over nothing is the figure itself.
  return aroundGain(
    peakPower.value,
    0,
    halfWidth([
      known(spreads.pull, 1 / own.pulls),
      known(spreads.within, 1 / own.pulls),
      known(spreads.setUp, own.setUps > 1 ? 1 / own.setUps : 0),
      known(spreads.day, own.sessions > 1 ? 1 / own.sessions : 0),
      ofFit(peakPower),
    ]),
  );
}

/**
 * Gain of the highest power, W, 95 %: as the average scatters, and one speed within the pulls, and both fitted tops. `null`
 * unless both are tops, or both still climb at the same last speed. `factor`: what the changed figures are taken times, 1 where
 * nothing shifts them.
 */
export function peakPowerGain(
  baseline: ComparedCombination,
  changed: ComparedCombination,
  ofGroup: GroupGain,
  { spreads }: ScatterComparison,
  factor: number,
): GainBand['peakPower'] {
  const [before, after] = [baseline.peakPower, changed.peakPower];
  if (before === null || after === null || before.stillClimbing !== after.stillClimbing) return null;
  if (before.stillClimbing && Math.abs(before.atRpm - after.atRpm) > SAME_SPEED_RPM) return null;
  const weights = ofGroup.weights.reduce((sum, weight) => sum + weight ** 2, 0);
  const gain = factor * after.value - before.value;
  const [low, high] = aroundGain(
    gain,
    before.value,
    halfWidth([
      { variance: sumOf(ofGroup.parts), degreesOfFreedom: ofGroup.degreesOfFreedom },
      { variance: weights * spreads.within.sigma ** 2, degreesOfFreedom: spreads.within.degreesOfFreedom },
      ofFit(before),
      ofFit(after),
    ]),
  );
  return { gain, low, high };
}

/** Scatter of a fitted top as a share of it. */
const ofFit = ({ value, valueSpread }: Peak): KnownVariance => ({
  variance: ((valueSpread ?? 0) / value) ** 2,
  degreesOfFreedom: FIT_DEGREES,
});

/** Of a 95 % band on the scale of the logarithm. */
export function halfWidth(parts: readonly KnownVariance[]): number {
  const deviation = Math.sqrt(parts.reduce((sum, { variance }) => sum + variance, 0));
  return deviation * studentTQuantile(0.975, equivalentDegreesOfFreedom(parts));
}
