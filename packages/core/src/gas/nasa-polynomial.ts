/**
 * Heat capacity, enthalpy and entropy of one gas by the NASA polynomials of seven terms, two ranges that meet at 1000 K: McBride, Gordon &
 * Reno, NASA TM-4513 (1993); argon as in GRI-Mech 3.0, where the two agree. Held from 200 K to 6000 K (300 to 5000 K argon).
 */
export interface Gas {
  /** kg/mol */
  molarMass: number;
  below1000: SevenTerms;
  above1000: SevenTerms;
}

type SevenTerms = readonly [number, number, number, number, number, number, number];

/** J/(mol·K), CODATA 2018, exact. */
export const MOLAR_GAS_CONSTANT = 8.314462618;

const termsAt = (gas: Gas, temperature: number): SevenTerms =>
  temperature < 1000 ? gas.below1000 : gas.above1000;

/** J/(mol·K) at constant pressure, at a temperature in K. `molarHeatCapacity(NITROGEN, 300)`: 29.125 */
export function molarHeatCapacity(gas: Gas, temperature: number): number {
  const [a1, a2, a3, a4, a5] = termsAt(gas, temperature);
  const t = temperature;
  return MOLAR_GAS_CONSTANT * (a1 + t * (a2 + t * (a3 + t * (a4 + t * a5))));
}

/** J/mol, with the heat of formation in it: only differences mean anything here. */
export function molarEnthalpy(gas: Gas, temperature: number): number {
  const [a1, a2, a3, a4, a5, a6] = termsAt(gas, temperature);
  const t = temperature;
  return MOLAR_GAS_CONSTANT * (a6 + t * (a1 + t * (a2 / 2 + t * (a3 / 3 + t * (a4 / 4 + (t * a5) / 5)))));
}

/** J/(mol·K) at 1 bar. */
export function molarEntropy(gas: Gas, temperature: number): number {
  const [a1, a2, a3, a4, a5, , a7] = termsAt(gas, temperature);
  const t = temperature;
  return MOLAR_GAS_CONSTANT * (a1 * Math.log(t) + t * (a2 + t * (a3 / 2 + t * (a4 / 3 + (t * a5) / 4))) + a7);
}
