import { evaporationCooling } from '../evaporation.ts';
import type { ChargeAtLoad, Fuel, FuelSupply } from '../model.ts';

/** What stands in the cylinder at bottom dead centre, before it is compressed. */
export interface TrappedCharge {
  /** Pa, absolute, K */
  pressure: number;
  temperature: number;
  /** J/m³ of the whole cylinder that burning gives to the gas, what the walls take off. */
  heat: number;
  /** K by which evaporating fuel has cooled it behind the manifold, and one standard deviation of that. */
  cooling: number;
  coolingSpread: number;
}

/**
 * Share of the heat of evaporation that comes out of the charge rather than out of walls and valves, behind the manifold's probe, and one standard
 * deviation (common practice, no source). Into the port most of the fuel strikes a hot valve.
 */
export const EVAPORATES_IN_CHARGE: Record<FuelSupply['mixes'], { share: number; spread: number }> = {
  port: { share: 0.3, spread: 0.15 },
  direct: { share: 0.75, spread: 0.1 },
  carburettor: { share: 0.2, spread: 0.1 },
};
/** J/(kg·K) of the gas in the cylinder. */
const GAS_CONSTANT = 285;
/** K of what is left in the cylinder when the exhaust valve shuts; of the walls of port and cylinder (common practice, no source). */
const RESIDUAL_TEMPERATURE = 1100;
const WALL_TEMPERATURE = 420;
/** Share of the way to the walls' temperature that the charge is warmed on its way in (common practice, no source). */
const WARMED = 0.12;
/**
 * Share of what burns that the walls have taken by the time the end gas is gone (common practice, no source). Rich of stoichiometric the air sets the same
 * energy free as there: what the fuel has more stays unburnt (Heywood's combustion efficiency over mixture, from memory).
 */
const LOST_TO_WALLS = 0.1;

/**
 * The charge at the beginning of compression: fresh charge at the manifold's pressure, warmed by the walls, cooled by its fuel, mixed with what was
 * left. The cylinder is taken as full at bottom dead centre; a late valve makes less of it.
 */
export function trappedCharge(charge: ChargeAtLoad, fuel: Fuel, mixes: FuelSupply['mixes']): TrappedCharge {
  const { manifoldPressure, manifoldTemperature, compressionRatio, exhaustPressure, lambda } = charge;
  const { share, spread } = EVAPORATES_IN_CHARGE[mixes];
  const cooling = evaporationCooling(fuel, lambda, share);
  const warmed = manifoldTemperature + WARMED * (WALL_TEMPERATURE - manifoldTemperature);
  const fresh = warmed - cooling;
  const left =
    ((exhaustPressure / manifoldPressure) * (fresh / RESIDUAL_TEMPERATURE)) / (compressionRatio - 1);
  const residual = Math.min(0.5, left / (1 + left));
  const temperature = fresh + residual * (RESIDUAL_TEMPERATURE - fresh);
  const mass = manifoldPressure / (GAS_CONSTANT * temperature);
  const airInIt = (1 - residual) / (1 + 1 / (fuel.stoichiometricAirFuelRatio * lambda));
  const energy = fuel.heatingValue / (fuel.stoichiometricAirFuelRatio * Math.max(1, lambda));
  return {
    pressure: manifoldPressure,
    temperature,
    heat: mass * airInIt * energy * (1 - LOST_TO_WALLS),
    cooling,
    coolingSpread: evaporationCooling(fuel, lambda, share + spread) - cooling,
  };
}
