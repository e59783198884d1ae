import { demandProbability } from '../numeric/demand.ts';
import { gaussLegendre } from '../numeric/gauss-legendre.ts';
import { normalCdf, normalDensity } from '../numeric/normal.ts';
import { rootInBracket } from '../numeric/root-in-bracket.ts';

/** Beyond this many standard errors nothing is left. */
const FARTHEST = 9;

/** Where the sum of the evidence can be while no look has called: points, and density times their weight. */
interface NotYetCalled {
  at: Float64Array;
  mass: Float64Array;
}

/**
 * Error spent up to a share of the planned pulls, of `alpha` in all: alpha ln(1 + (e - 1) share), which lets equal looks have
 * nearly equal limits (Lan and DeMets 1983, from memory).
 *
 * @example alphaSpent(0.5, 0.05) // 0.0310
 */
export function alphaSpent(fraction: number, alpha: number): number {
  demandProbability('error to spend', alpha);
  if (!(fraction >= 0 && fraction <= 1))
    throw new RangeError(`share of the planned pulls is ${fraction}: it must be 0 to 1`);
  return alpha * Math.log1p((Math.E - 1) * fraction);
}

/**
 * How many standard errors a difference must reach at one of several planned looks, so that over all of them a difference of
 * nothing is called with the chance `alpha`. Two-sided, scatter known; for few degrees of freedom take the same tail of Student's t.
 *
 * @param fractions share of the planned evidence at each look, rising, above 0, at most 1
 * @param look which of them, from 1
 * @example criticalZAtLook([0.2, 0.4, 0.6, 0.8, 1], 1, 0.05) // 2.438
 */
export function criticalZAtLook(fractions: readonly number[], look: number, alpha: number): number {
  demandLooks(fractions);
  if (!(Number.isInteger(look) && look >= 1 && look <= fractions.length))
    throw new RangeError(`look is ${look}: it must be 1 to ${fractions.length}`);
  let open: NotYetCalled | null = null;
  let spent = 0;
  for (let k = 0; ; k++) {
    const before: number = k === 0 ? 0 : fractions[k - 1]!;
    const due = alphaSpent(fractions[k]!, alpha) - spent;
    const state: NotYetCalled | null = open;
    const critical = rootInBracket((z) => due - calledAt(state, before, fractions[k]!, z), {
      low: 0,
      high: FARTHEST,
    });
    if (k === look - 1) return critical;
    spent += due;
    open = carriedOn(state, before, fractions[k]!, critical);
  }
}

/**
 * Chance that a difference of nothing is called at some look, for given limits in standard errors. Armitage, McPherson and
 * Rowe 1969: what is left open at one look is carried to the next by an independent normal step.
 *
 * @example chanceOfCalling([0.5, 1], [1.96, 1.96]) // 0.083: two unplanned looks at 5 %
 */
export function chanceOfCalling(fractions: readonly number[], limits: readonly number[]): number {
  demandLooks(fractions);
  if (limits.length !== fractions.length)
    throw new RangeError(`${fractions.length} looks have ${limits.length} limits: one each is needed`);
  let open: NotYetCalled | null = null;
  let chance = 0;
  let before = 0;
  fractions.forEach((fraction, k) => {
    chance += calledAt(open, before, fraction, limits[k]!);
    open = carriedOn(open, before, fraction, limits[k]!);
    before = fraction;
  });
  return chance;
}

/** Chance of first being called at this look with the limit `z`. */
function calledAt(open: NotYetCalled | null, before: number, fraction: number, z: number): number {
  if (open === null) return 2 * normalCdf(-z);
  const limit = z * Math.sqrt(fraction);
  const step = Math.sqrt(fraction - before);
  let chance = 0;
  for (let i = 0; i < open.at.length; i++) {
    const x = open.at[i]!;
    chance += open.mass[i]! * (normalCdf((-limit - x) / step) + normalCdf((x - limit) / step));
  }
  return chance;
}

/** What this look leaves open. */
function carriedOn(open: NotYetCalled | null, before: number, fraction: number, z: number): NotYetCalled {
  const limit = Math.min(z, FARTHEST) * Math.sqrt(fraction);
  const step = Math.sqrt(fraction - before);
  const { nodes, weights } = gaussLegendre(Math.min(400, 24 + Math.ceil((6 * limit) / step)));
  const at = nodes.map((node) => node * limit);
  const mass = at.map((x, i) => {
    let density = 0;
    if (open === null) density = normalDensity(x / step);
    else
      for (let j = 0; j < open.at.length; j++)
        density += open.mass[j]! * normalDensity((x - open.at[j]!) / step);
    return (weights[i]! * limit * density) / step;
  });
  return { at, mass };
}

function demandLooks(fractions: readonly number[]): void {
  let before = 0;
  for (const fraction of fractions) {
    if (!(fraction > before && fraction <= 1))
      throw new RangeError(
        `shares of the planned pulls are ${fractions.join(', ')}: they must rise, above 0, to at most 1`,
      );
    before = fraction;
  }
  if (fractions.length === 0) throw new RangeError('no look is planned: at least one is needed');
}
