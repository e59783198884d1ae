import type { Fuel, Induction, UsualRange } from './model.ts';
import { type ByFuel, inPoundPerHpHour, usualFor } from './usual-by-fuel.ts';

/** kg/J told in lb/(hp·h), at full load and observed power. */
const told = (
  gasoline: [number, number, number],
  e85: [number, number, number],
  methanol: [number, number, number],
): ByFuel => ({
  gasoline: inPoundPerHpHour(gasoline),
  e85: inPoundPerHpHour(e85),
  methanol: inPoundPerHpHour(methanol),
});

/** With a supercharger part of the power drives it, and the mixture is richer. The alcohols have one range for all that are boosted. */
const BOOSTED = { e85: [0.75, 0.85, 0.95], methanol: [1.1, 1.3, 1.5] } as const;
const boosted = (gasoline: [number, number, number]): ByFuel =>
  told(gasoline, [...BOOSTED.e85], [...BOOSTED.methanol]);

const CONSUMPTION: Record<Induction, ByFuel> = {
  'naturally aspirated': told([0.4, 0.48, 0.55], [0.63, 0.68, 0.72], [0.95, 1.03, 1.1]),
  centrifugal: boosted([0.55, 0.6, 0.65]),
  'positive displacement': boosted([0.6, 0.65, 0.7]),
  turbocharged: boosted([0.52, 0.57, 0.62]),
};

/**
 * Fuel for a joule at the brake at full load, kg/J: what is usual with its ends. Common practice, no source, of engines that are built for
 * power; late production engines use less ([docs/fuel.md](../../../../docs/fuel.md)). Between gasoline, E85 and methanol it
 * is the energy used that is read over heating value.
 *
 * @example usualConsumption(gasoline, 'centrifugal').usual // 1.014e-7 kg/J: 365 g/(kW·h), 0.60 lb/(hp·h)
 */
export function usualConsumption(fuel: Fuel, induction: Induction): UsualRange {
  return usualFor(fuel, CONSUMPTION[induction], 'usual', (heatingValue) => heatingValue);
}
