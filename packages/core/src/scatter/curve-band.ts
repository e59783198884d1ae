import { criticalOfFamily, type Family } from './critical-value.ts';
import { equivalentDegreesOfFreedom, type KnownVariance } from './equivalent-degrees-of-freedom.ts';
import { criticalLargestT } from './largest-t.ts';
import type { GroupGain, ScatterComparison } from './model.ts';
import { dot } from './orthonormal-columns.ts';
import type { ArraysOnNodes } from './window-of-arrays.ts';

export interface CurveInput {
  on: ArraysOnNodes;
  weights: Float64Array;
  /** What the average over the window scatters by. */
  gain: readonly KnownVariance[];
  within: ScatterComparison['spreads']['within'];
  family: Family;
  /** Two-sided error of the 95 % bands at this look. */
  error: number;
}

/**
 * A gain over engine speed with its bands. All speeds share what the average scatters by; each adds the scatter of one speed
 * within a pull. The band for all speeds at once is that of the largest |t| over the nodes; with several gains over one baseline
 * each has its share of the error (Bonferroni).
 */
export function curveBand({ on, weights, gain, within, family, error }: CurveInput): GroupGain['curve'] {
  const { engineSpeedRpm: speeds, full, logPower } = on;
  const own = {
    variance: within.sigma ** 2 * dot(weights, weights),
    degreesOfFreedom: within.degreesOfFreedom,
  };
  const shared = gain.reduce((sum, { variance }) => sum + variance, 0);
  const deviation = Math.sqrt(shared + own.variance);
  const degreesOfFreedom = equivalentDegreesOfFreedom([...gain, own]);
  const criticalPointwise = criticalOfFamily(family, degreesOfFreedom, error);
  const criticalSimultaneous = Math.max(
    criticalPointwise,
    criticalLargestT({
      count: full.length,
      sharedShare: deviation > 0 ? shared / deviation ** 2 : 1,
      neighbourCorrelation: neighbourCorrelation(speeds, within.lengthRpm),
      degreesOfFreedom,
      confidence: 1 - error / family.count,
    }),
  );
  const atFull = (value: (node: number) => number) => {
    const values = new Float64Array(speeds.length).fill(Number.NaN);
    for (const node of full) values[node] = value(node);
    return values;
  };
  return {
    logGain: atFull((node) =>
      weights.reduce((sum, weight, pull) => sum + weight * logPower[pull]![node]!, 0),
    ),
    pointwise: atFull(() => criticalPointwise * deviation),
    simultaneous: atFull(() => criticalSimultaneous * deviation),
    criticalPointwise,
    criticalSimultaneous,
    degreesOfFreedom,
  };
}

/** Of the scatter of two nodes side by side: by 1/e at the length over which neighbours are alike. */
function neighbourCorrelation(speeds: Float64Array, lengthRpm: number): number {
  if (speeds.length < 2 || !(lengthRpm > 0)) return 0;
  const spacing = (speeds.at(-1)! - speeds[0]!) / (speeds.length - 1);
  return Math.exp(-spacing / lengthRpm);
}
