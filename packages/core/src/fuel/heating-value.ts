import { molarMassOf } from './stoichiometry.ts';
import type { Substance } from './substances.ts';

/** Formation enthalpies of what comes out, J/mol at 25 °C. From memory. */
const CARBON_DIOXIDE = -393.51e3;
const WATER_VAPOUR = -241.826e3;

/** Lower heating value of the liquid at 25 °C, J/kg: what its enthalpy of formation leaves to burnt gas with water as vapour. */
export function heatingValueOf(substance: Substance): number {
  const { stated, formationEnthalpy, carbon, hydrogen } = substance;
  if (stated !== null) return stated.heatingValue;
  const burnt = carbon * CARBON_DIOXIDE + (hydrogen / 2) * WATER_VAPOUR;
  return (formationEnthalpy!.liquid - burnt) / molarMassOf(substance);
}

/**
 * Heat that a kilogram takes to evaporate at 25 °C, J/kg. Handbooks often print that at the boiling point, a tenth less for
 * the alcohols: two legitimate numbers.
 */
export function latentHeatOf(substance: Substance): number {
  const { stated, formationEnthalpy } = substance;
  if (stated !== null) return stated.latentHeat;
  return (formationEnthalpy!.gas - formationEnthalpy!.liquid) / molarMassOf(substance);
}
