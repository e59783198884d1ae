import { blendOf } from './blend.ts';
import { GASOLINE } from './gasoline.ts';
import type { Fuel, SubstanceId } from './model.ts';
import { stoichiometricOfAtoms } from './stoichiometry.ts';
import { SUBSTANCES } from './substances.ts';

/**
 * The blend of gasoline with an alcohol that has a stoichiometric ratio: with ethanol down to ethanol's own, with methanol below. It stands in
 * for a fuel of which only the ratio is known. `null`: leaner than gasoline or richer than methanol, where it is no such blend.
 *
 * @example fuelOfRatio(9.8) // 85 % ethanol, 15 % gasoline by volume
 */
export function fuelOfRatio(ratio: number): Fuel | null {
  const gasoline = GASOLINE.stoichiometricAirFuelRatio;
  const alcohol = (['ethanol', 'methanol'] as const).find((one) => ratio >= ratioOf(one));
  if (alcohol === undefined || ratio > gasoline) return null;
  const byMass = (gasoline - ratio) / (gasoline - ratioOf(alcohol));
  const volume = byMass / SUBSTANCES[alcohol].density;
  const share = volume / (volume + (1 - byMass) / SUBSTANCES.gasoline.density);
  return blendOf([
    { substance: alcohol, volumeShare: share },
    { substance: 'gasoline', volumeShare: 1 - share },
  ]);
}

const ratioOf = (substance: SubstanceId): number => stoichiometricOfAtoms(SUBSTANCES[substance]);
