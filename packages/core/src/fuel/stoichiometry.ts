/** Atoms of a fuel's molecule, or of one carbon atom's worth of it. */
export interface Atoms {
  carbon: number;
  hydrogen: number;
  oxygen: number;
}

/** kg/mol */
const CARBON = 12.011e-3;
const HYDROGEN = 1.008e-3;
const OXYGEN = 15.999e-3;
/** Air that brings one mole of oxygen: 1 + 3.773 moles of 28.962 g (nitrogen with argon counted as one). From memory. */
const AIR_FOR_OXYGEN = 4.773 * 28.962e-3;

/** Molar mass of a formula, kg/mol. `molarMassOf({ carbon: 2, hydrogen: 6, oxygen: 1 })`: 0.046069 */
export const molarMassOf = ({ carbon, hydrogen, oxygen }: Atoms): number =>
  CARBON * carbon + HYDROGEN * hydrogen + OXYGEN * oxygen;

/**
 * Air over fuel by mass that burns both up to carbon dioxide and water. Oxygen that the fuel brings need not come from the air.
 *
 * @example stoichiometricOfAtoms({ carbon: 2, hydrogen: 6, oxygen: 1 }) // 9.00, ethanol
 */
export function stoichiometricOfAtoms(atoms: Atoms): number {
  const { carbon, hydrogen, oxygen } = atoms;
  return ((carbon + hydrogen / 4 - oxygen / 2) * AIR_FOR_OXYGEN) / molarMassOf(atoms);
}
