import { chiSquareCdf } from '../numeric/index.ts';
import { scaleRule } from '../numeric/scale-rule.ts';
import { interpolantOf } from '../scatter/chebyshev.ts';
import { contradictedFrom, moderate, type Spread } from '../scatter/index.ts';
import type { Judged } from './odds-to-see.ts';

/** Chance of a scatter of the repeats that is left out. */
const NEGLIGIBLE = 1e-6;
/** Of the logarithm of the scatter of repeats. */
const STEP = 0.02;
/** Bands worked out of those that lie along one smooth line. */
const WORKED_OUT = 6;
/** So near to the jump the band is worked out on either side of it. */
const AT_JUMP = 1e-9;

/**
 * Bands that pulls not yet made may lead to. Their repeats scatter by chance: by chi-square about what history says. Each such
 * scatter is put together with history as the comparison will do it, which sets history aside in one case of four though it is
 * right; left out of account, a plan for 80 % odds would reach 60 to 70.
 *
 * @param repeats degrees of freedom of the scatter of the pulls to come; 0: none repeats
 * @param halfWidthOf half-width of the 95 % band with the spread of pulls as it will be used
 */
export function bandsToCome(
  history: Spread,
  repeats: number,
  halfWidthOf: (pull: Pick<Spread, 'sigma' | 'degreesOfFreedom'>) => number,
): Judged['bands'] {
  if (!(repeats > 0) || history.sigma === 0) return [{ chance: 1, halfWidth: halfWidthOf(history) }];
  const { scales, weights } = scaleRule(repeats, STEP);
  const kept = [...scales.keys()].filter((place) => weights[place]! > NEGLIGIBLE);
  const [low, high] = [scales[kept[0]!]!, scales[kept.at(-1)!]!];
  // The band jumps where history is set aside; on either side it is smooth, so a few worked out give the others.
  const jump = Math.sqrt(contradictedFrom(repeats, history.degreesOfFreedom));
  const chanceBelow = chiSquareCdf(repeats * jump ** 2, repeats);
  const sides = [
    { from: low, to: Math.min(high, jump * (1 - AT_JUMP)), chance: jump < high ? chanceBelow : 1 },
    { from: Math.max(low, jump * (1 + AT_JUMP)), to: high, chance: jump > low ? 1 - chanceBelow : 1 },
  ];
  return sides.flatMap(({ from, to, chance }) => {
    const own = kept.filter((place) => scales[place]! >= from && scales[place]! <= to);
    const all = own.reduce((sum, place) => sum + weights[place]!, 0);
    if (own.length === 0) return [];
    const halfWidth = interpolantOf(
      (logScale) =>
        halfWidthOf(
          moderate(history, { sigma: history.sigma * Math.exp(logScale), degreesOfFreedom: repeats }),
        ),
      { low: Math.log(from), high: Math.log(to), points: WORKED_OUT },
    );
    return own.map((place) => ({
      chance: (chance * weights[place]!) / all,
      halfWidth: halfWidth(Math.log(scales[place]!)),
    }));
  });
}
