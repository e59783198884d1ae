import type { Fuel } from './model.ts';

/** Fuel for a power at the brake, kg/s, by specific consumption, kg/J. `fuelFlowOfPower(300e3, 7.5e-8)`: 0.0225 */
export const fuelFlowOfPower = (power: number, consumption: number): number => power * consumption;

/** Fuel that an air flow takes at lambda, kg/s. `fuelFlowOfAir(0.146, 1, gasoline)`: 0.0100 */
export const fuelFlowOfAir = (airFlow: number, lambda: number, fuel: Fuel): number =>
  airFlow / (lambda * fuel.stoichiometricAirFuelRatio);

/** Air that a fuel flow takes at lambda, kg/s. */
export const airFlowOfFuel = (fuelFlow: number, lambda: number, fuel: Fuel): number =>
  fuelFlow * lambda * fuel.stoichiometricAirFuelRatio;
