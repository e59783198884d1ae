import { demandNumber } from './demand.ts';
import { normalCdf } from './normal.ts';
import { scaleRule } from './scale-rule.ts';

/**
 * Share below `t` of (Z + shift) / S, Z standard normal and S² = chi²(df) / df: what Student's t becomes where there is a true
 * difference of `shift` standard errors. Gives the chance to see it. 1e-10 absolute; Infinity degrees of freedom is a shifted normal.
 *
 * @example noncentralTCdf(2.228139, 10, 3) // 0.2286: a difference of three standard errors is missed so often
 */
export function noncentralTCdf(t: number, degreesOfFreedom: number, shift: number): number {
  demandNumber('t', t);
  demandNumber('shift', shift);
  // Φ(t s - shift) turns over within 1 / |shift| of ln s round t s = shift. In halves, so that few rules serve all shifts.
  const finest = 2 ** Math.floor(Math.log2(0.4 / (1 + Math.abs(shift))));
  const { scales, weights } = scaleRule(degreesOfFreedom, finest);
  let sum = 0;
  for (let i = 0; i < scales.length; i++) sum += weights[i]! * normalCdf(t * scales[i]! - shift);
  return sum;
}
