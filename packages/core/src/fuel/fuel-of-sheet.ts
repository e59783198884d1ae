import { type CombinationSheet, sheetNumber, sheetValue } from '../combination/index.ts';
import { numberFigure, type Provenance, percentFigure } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import { blendOf } from './blend.ts';
import { fuelNamed } from './fuel-named.ts';
import { fuelOfRatio } from './fuel-of-ratio.ts';
import { GASOLINE } from './gasoline.ts';
import type { Fuel, FuelPart } from './model.ts';

/**
 * The fuel of a sheet: of its shares of alcohol where they are on it, else by its name, else by its ratio, else gasoline. Density, octane and
 * stoichiometric ratio that are stated win over what follows. What was taken is said.
 */
export function fuelOfSheet(sheet: CombinationSheet): { fuel: Fuel; assumptions: Remark[] } {
  const { fuel, assumptions } =
    byShares(sheet) ?? fuelByWords(nameOn(sheet)) ?? byRatio(sheet) ?? taken(sheet);
  return { fuel: asStated(fuel, sheet), assumptions };
}

/** Whether the sheet says what is burnt: shares, a name that is understood, or a stoichiometric ratio. */
export function isFuelTold(sheet: CombinationSheet): boolean {
  const isThere = (field: string) => sheetNumber(sheet, 'fuel', field) !== null;
  if (['ethanolShare', 'methanolShare', 'stoichiometricAirFuelRatio'].some(isThere)) return true;
  return fuelByWords(nameOn(sheet)) !== null;
}

const nameOn = (sheet: CombinationSheet): string => {
  const text = sheetValue(sheet, 'fuel', 'name')?.text ?? '';
  return text === 'unknown' ? '' : text;
};

function byShares(sheet: CombinationSheet): { fuel: Fuel; assumptions: Remark[] } | null {
  const [ethanol, methanol] = [
    sheetNumber(sheet, 'fuel', 'ethanolShare'),
    sheetNumber(sheet, 'fuel', 'methanolShare'),
  ];
  if (ethanol === null && methanol === null) return null;
  const whole = (ethanol ?? 0) + (methanol ?? 0);
  // More than all cannot be; it is read as their proportion, and said.
  const scale = whole > 1 ? 1 / whole : 1;
  const parts: FuelPart[] = [
    { substance: 'ethanol', volumeShare: (ethanol ?? 0) * scale },
    { substance: 'methanol', volumeShare: (methanol ?? 0) * scale },
    { substance: 'gasoline', volumeShare: Math.max(0, 1 - whole) },
  ];
  const fuel = blendOf(parts);
  if (whole <= 1) return { fuel, assumptions: [] };
  return {
    fuel,
    assumptions: [
      remark(
        'caution',
        'fuel-shares-over-all',
        said`Ethanol and methanol on the sheet make ${percentFigure(whole)} of the fuel; more than 100 % cannot be. Their proportion was kept; mend the shares.`,
      ),
    ],
  };
}

/** Air for one of fuel above which it is a gasoline, be it with a little ethanol (E5 is 14.3). */
const GASOLINE_FROM = 14.2;

/** A fuel of which only the ratio is understood: heating value, latent heat and octane are those of the blend that has it. */
function byRatio(sheet: CombinationSheet): { fuel: Fuel; assumptions: Remark[] } | null {
  const ratio = sheetNumber(sheet, 'fuel', 'stoichiometricAirFuelRatio');
  const fuel = ratio === null || ratio > GASOLINE_FROM ? null : fuelOfRatio(ratio);
  if (fuel === null) return null;
  const assumption = remark(
    'caution',
    'fuel-by-ratio',
    said`Of the fuel only its stoichiometric ratio of ${numberFigure(ratio!, 1)} is understood; it is taken for ${fuel.name}, which has that ratio. Put its ethanol or methanol by volume on the sheet.`,
  );
  return { fuel, assumptions: [assumption] };
}

function taken(sheet: CombinationSheet): { fuel: Fuel; assumptions: Remark[] } {
  const name = nameOn(sheet);
  return {
    fuel: GASOLINE,
    assumptions: [
      remark(
        name === '' ? 'note' : 'caution',
        'fuel-assumed',
        name === ''
          ? 'No fuel is on the sheet; gasoline is taken. Put it under fuel, name.'
          : `"${name}" is not a fuel that is known; gasoline is taken. Put its ethanol or methanol by volume on the sheet, or a stoichiometric ratio and a density.`,
      ),
    ],
  };
}

/** A fuel by its name, or by words in it: `race methanol`, `pump petrol, winter`. `null`: nothing is understood. */
function fuelByWords(name: string): { fuel: Fuel; assumptions: Remark[] } | null {
  if (name === '') return null;
  const read = fuelNamed(name);
  if (read.ok) return { fuel: read.value, assumptions: read.remarks };
  const word = WORDS.find(({ pattern }) => pattern.test(name));
  if (word === undefined) return null;
  const meant = fuelNamed(word.fuel);
  return meant.ok ? { fuel: meant.value, assumptions: meant.remarks } : null;
}

const WORDS = [
  { pattern: /\be\s?85\b/iu, fuel: 'e85' },
  { pattern: /methanol/iu, fuel: 'methanol' },
  { pattern: /ethanol/iu, fuel: 'ethanol' },
  { pattern: /\be\s?10\b/iu, fuel: 'e10' },
  { pattern: /petrol|gasoline|pump|premium|super|unleaded/iu, fuel: 'gasoline' },
] as const;

/** What stands on the sheet in place of what follows from the parts. */
function asStated(fuel: Fuel, sheet: CombinationSheet): Fuel {
  const stated = (field: string): { value: number; from: Provenance } | null => {
    const entry = sheetValue(sheet, 'fuel', field);
    if (entry === null || entry.value === null) return null;
    return { value: entry.value, from: { kind: 'derived', source: `on the sheet, ${entry.origin}` } };
  };
  const ratio = stated('stoichiometricAirFuelRatio');
  const density = stated('density');
  const [research, motor] = [stated('researchOctane'), stated('motorOctane')];
  const octane = research ?? motor;
  return {
    ...fuel,
    stoichiometricAirFuelRatio: ratio?.value ?? fuel.stoichiometricAirFuelRatio,
    density: density?.value ?? fuel.density,
    researchOctane: research?.value ?? fuel.researchOctane,
    motorOctane: motor?.value ?? (research === null ? fuel.motorOctane : motorBeside(fuel, research.value)),
    from: {
      ...fuel.from,
      ...(ratio === null ? {} : { stoichiometricAirFuelRatio: ratio.from }),
      ...(density === null ? {} : { density: density.from }),
      ...(octane === null ? {} : { octane: octane.from }),
    },
  };
}

/** Motor octane beside a stated research octane: as far below it as in the fuel of its kind. */
const motorBeside = ({ researchOctane, motorOctane }: Fuel, stated: number): number | null =>
  researchOctane === null || motorOctane === null ? null : stated - (researchOctane - motorOctane);
