import type { Provenance } from '../quantity/index.ts';
import { heatingValueOf, latentHeatOf } from './heating-value.ts';
import type { Fuel, FuelPart } from './model.ts';
import { molarMassOf, stoichiometricOfAtoms } from './stoichiometry.ts';
import { SUBSTANCES, type Substance } from './substances.ts';

/**
 * A fuel of its parts by volume. Stoichiometric ratio, heating value and latent heat mix by mass, density by volume (what mixing
 * shrinks is left out: below 0.3 %), octane by moles, which is how small shares of alcohol lift it. Throws where the shares do
 * not add up to 1.
 *
 * @example blendOf([{ substance: 'ethanol', volumeShare: 0.85 }, { substance: 'gasoline', volumeShare: 0.15 }]).stoichiometricAirFuelRatio // 9.80
 */
export function blendOf(parts: readonly FuelPart[], name: string = nameOfBlend(parts)): Fuel {
  const present = parts.filter(({ volumeShare }) => volumeShare > 0);
  const whole = present.reduce((sum, { volumeShare }) => sum + volumeShare, 0);
  if (!(Math.abs(whole - 1) < 1e-6)) throw new Error(`shares of a fuel add up to ${whole}, not to 1`);
  const of = present.map(({ substance, volumeShare }) => {
    const made = SUBSTANCES[substance];
    const mass = volumeShare * made.density;
    return { made, mass, moles: mass / (made.meanMolarMass ?? molarMassOf(made)) };
  });
  const byMass = (figure: (one: Substance) => number) => mixed(of, 'mass', figure);
  const single = of.length === 1 ? of[0]!.made : null;
  const from = (figure: keyof Substance['from'], how: string): Provenance =>
    single?.from[figure] ?? { kind: 'derived', source: how };
  return {
    name,
    parts: present.map((part) => ({ ...part })),
    stoichiometricAirFuelRatio: byMass(stoichiometricOfAtoms),
    heatingValue: byMass(heatingValueOf),
    density: of.reduce((sum, { mass }) => sum + mass, 0),
    latentHeat: byMass(latentHeatOf),
    researchOctane: mixed(of, 'moles', ({ researchOctane }) => researchOctane),
    motorOctane: mixed(of, 'moles', ({ motorOctane }) => motorOctane),
    from: {
      stoichiometricAirFuelRatio: {
        kind: 'derived',
        source: 'carbon, hydrogen and oxygen of its parts, mixed by mass',
      },
      heatingValue: from('heatingValue', 'of its parts, mixed by mass'),
      density: from('density', 'of its parts, mixed by volume'),
      latentHeat: from('latentHeat', 'of its parts at 25 °C, mixed by mass'),
      octane: from('octane', 'of its parts, mixed by moles'),
    },
  };
}

function mixed<K extends 'mass' | 'moles'>(
  of: readonly ({ made: Substance } & Record<K, number>)[],
  by: K,
  figure: (one: Substance) => number,
): number {
  const whole = of.reduce((sum, one) => sum + one[by], 0);
  return of.reduce((sum, one) => sum + one[by] * figure(one.made), 0) / whole;
}

/** `ethanol`; `70 % ethanol, 30 % gasoline by volume` */
function nameOfBlend(parts: readonly FuelPart[]): string {
  const present = parts.filter(({ volumeShare }) => volumeShare > 0);
  if (present.length === 1) return present[0]!.substance;
  const words = [...present]
    .sort((one, other) => other.volumeShare - one.volumeShare)
    .map(({ substance, volumeShare }) => `${+(100 * volumeShare).toFixed(1)} % ${substance}`);
  return `${words.join(', ')} by volume`;
}
