import {
  type Gas,
  MOLAR_GAS_CONSTANT,
  molarEnthalpy,
  molarEntropy,
  molarHeatCapacity,
} from './nasa-polynomial.ts';
import { ARGON, CARBON_DIOXIDE, NITROGEN, OXYGEN, WATER_VAPOUR } from './species.ts';

/** Ideal gases together: mole fractions that add up to 1. */
export interface Mixture {
  parts: readonly { gas: Gas; fraction: number }[];
  /** kg/mol */
  molarMass: number;
}

export function mixtureOf(parts: readonly { gas: Gas; moles: number }[]): Mixture {
  const moles = parts.reduce((sum, part) => sum + part.moles, 0);
  const fractions = parts.map((part) => ({ gas: part.gas, fraction: part.moles / moles }));
  return {
    parts: fractions,
    molarMass: fractions.reduce((sum, { gas, fraction }) => sum + fraction * gas.molarMass, 0),
  };
}

/** Dry air by moles: 78.084 % N2, 20.946 % O2, 0.934 % Ar, 0.036 % CO2 (the usual standard composition). */
const DRY_AIR_PARTS = [
  { gas: NITROGEN, moles: 0.78084 },
  { gas: OXYGEN, moles: 0.20946 },
  { gas: ARGON, moles: 0.00934 },
  { gas: CARBON_DIOXIDE, moles: 0.00036 },
] as const;

export const DRY_AIR: Mixture = mixtureOf(DRY_AIR_PARTS);

/** Air with water vapour, kg of water per kg of dry air. `moistAir(0.01)` */
export function moistAir(humidityRatio: number): Mixture {
  const molesOfAir = DRY_AIR_PARTS.reduce((sum, { moles }) => sum + moles, 0);
  const water = (humidityRatio * molesOfAir * DRY_AIR.molarMass) / WATER_VAPOUR.molarMass;
  return mixtureOf([...DRY_AIR_PARTS, { gas: WATER_VAPOUR, moles: water }]);
}

/** J/(kg·K) */
export const gasConstantOf = ({ molarMass }: Mixture): number => MOLAR_GAS_CONSTANT / molarMass;

/** J/(kg·K) at constant pressure, K. `specificHeatOf(DRY_AIR, 300)`: 1004.83 */
export const specificHeatOf = (mixture: Mixture, temperature: number): number =>
  sumOf(mixture, (gas) => molarHeatCapacity(gas, temperature));

/** Ratio of specific heats. `heatRatioOf(DRY_AIR, 300)`: 1.3999 */
export function heatRatioOf(mixture: Mixture, temperature: number): number {
  const specificHeat = specificHeatOf(mixture, temperature);
  return specificHeat / (specificHeat - gasConstantOf(mixture));
}

/** J/kg; only differences mean anything. */
export const enthalpyOf = (mixture: Mixture, temperature: number): number =>
  sumOf(mixture, (gas) => molarEnthalpy(gas, temperature));

/** J/(kg·K), the part that temperature has in it: two states of equal entropy differ in it by R ln(pressure ratio). */
export const entropyFunctionOf = (mixture: Mixture, temperature: number): number =>
  sumOf(mixture, (gas) => molarEntropy(gas, temperature));

function sumOf({ parts, molarMass }: Mixture, of: (gas: Gas) => number): number {
  return parts.reduce((sum, { gas, fraction }) => sum + fraction * of(gas), 0) / molarMass;
}
