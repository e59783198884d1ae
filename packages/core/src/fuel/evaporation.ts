import type { Fuel } from './model.ts';

/** J/(kg·K) at constant pressure: of air, and usual of fuel as vapour and as liquid (from memory). */
const AIR = 1005;
const VAPOUR = 1700;
const LIQUID = 2200;

/**
 * K by which a charge is colder once the share `share` of its fuel has evaporated in it, with fuel as warm as the air. Energy alone: whether so
 * much can evaporate before the valve is not asked, and of methanol all of it cannot.
 *
 * @param share  of the fuel, 0 to 1
 * @example evaporationCooling(gasoline, 0.8, 1) // 26 K; of methanol at 0.75 some 170 K
 */
export function evaporationCooling(fuel: Fuel, lambda: number, share: number): number {
  const mixed = 1 / (lambda * fuel.stoichiometricAirFuelRatio);
  const warmed = AIR + mixed * (share * VAPOUR + (1 - share) * LIQUID);
  return (share * mixed * fuel.latentHeat) / warmed;
}
