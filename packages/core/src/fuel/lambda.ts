import type { Fuel, Induction, UsualRange } from './model.ts';
import { type ByFuel, usualFor } from './usual-by-fuel.ts';

const BOOSTED: Pick<ByFuel, 'e85' | 'methanol'> = { e85: [0.76, 0.8, 0.84], methanol: [0.65, 0.72, 0.8] };

const LAMBDA: Record<Induction, ByFuel> = {
  'naturally aspirated': {
    gasoline: [0.86, 0.87, 0.9],
    e85: [0.84, 0.86, 0.88],
    methanol: [0.72, 0.78, 0.85],
  },
  centrifugal: { gasoline: [0.76, 0.79, 0.82], ...BOOSTED },
  'positive displacement': { gasoline: [0.75, 0.78, 0.8], ...BOOSTED },
  turbocharged: { gasoline: [0.75, 0.78, 0.8], ...BOOSTED },
};

/**
 * Air over stoichiometric air at full load: for most power without boost, for safety under it. Common practice, no source.
 *
 * @example usualLambda(gasoline, 'centrifugal').usual // 0.79
 */
export function usualLambda(fuel: Fuel, induction: Induction): UsualRange {
  return usualFor(fuel, LAMBDA[induction], 'usual mixture');
}
