import type { Provenance } from '../quantity/index.ts';
import { blendOf } from './blend.ts';
import type { Fuel, FuelPart } from './model.ts';

/** A fuel that is met by a name. */
export interface NamedFuel {
  fuel: Fuel;
  /** Other words for it, in small letters. */
  spellings: readonly string[];
  /** What should be known before one counts on it; '': nothing. */
  caution: string;
}

const AS_SOLD: Provenance = { kind: 'common practice', source: 'as sold; common practice, no source' };

const withGasoline = (substance: 'ethanol' | 'methanol', percent: number): FuelPart[] => [
  { substance, volumeShare: percent / 100 },
  { substance: 'gasoline', volumeShare: (100 - percent) / 100 },
];

/** Octane that it is sold by wins over what its parts would come to. */
const soldAs = (fuel: Fuel, researchOctane: number, motorOctane: number, density?: number): Fuel => ({
  ...fuel,
  researchOctane,
  motorOctane,
  density: density ?? fuel.density,
  from: { ...fuel.from, octane: AS_SOLD, ...(density === undefined ? {} : { density: AS_SOLD }) },
});

const named = (fuel: Fuel, spellings: readonly string[] = [], caution = ''): NamedFuel => ({
  fuel,
  spellings,
  caution,
});

const gasoline = (name: string): Fuel => blendOf([{ substance: 'gasoline', volumeShare: 1 }], name);
const ethanolBlend = (percent: number, name: string): Fuel => blendOf(withGasoline('ethanol', percent), name);

const MEASURE_IT =
  'What is sold as E85 has 51 to 83 % ethanol (common practice, no source), the least of it in winter: measure it, and name it by what is in it, such as "70 % ethanol, 30 % gasoline".';

/** Every named fuel, as data. Shares by volume. */
export const NAMED_FUELS: readonly NamedFuel[] = [
  named(gasoline('gasoline'), [
    'petrol',
    'gas',
    'pump gasoline',
    'pump petrol',
    'pump gas',
    'pump gasoline 95',
    'gasoline 95',
    'e0',
  ]),
  named(soldAs(gasoline('gasoline 98'), 98, 87), [
    'pump gasoline 98',
    'petrol 98',
    'pump petrol 98',
    'premium',
  ]),
  named(
    soldAs(gasoline('racing gasoline'), 110, 100),
    ['race gasoline', 'racing petrol', 'race gas', 'race fuel', 'racing fuel'],
    'Racing gasolines differ: state octane, density and stoichiometric ratio from the drum.',
  ),
  named(soldAs(ethanolBlend(10, 'E10'), 95, 85), []),
  named(ethanolBlend(85, 'E85 as labelled'), ['e85', 'e85 label'], MEASURE_IT),
  named(ethanolBlend(51, 'E85 winter 51 %'), ['e85 winter', 'winter e85', 'e85 51 %']),
  named(ethanolBlend(70, 'E85 usual 70 %'), ['e85 usual', 'e85 70 %']),
  named(ethanolBlend(83, 'E85 summer 83 %'), ['e85 summer', 'summer e85', 'e85 83 %']),
  named(blendOf([{ substance: 'ethanol', volumeShare: 1 }], 'ethanol'), ['e100', 'ethyl alcohol']),
  named(
    blendOf([{ substance: 'methanol', volumeShare: 1 }], 'methanol'),
    ['m100', 'methyl alcohol'],
    'Methanol burns with a flame that is not seen by daylight, is poisonous through the skin and eats aluminium and rubber: keep to its maker’s safety sheet.',
  ),
  named(blendOf(withGasoline('methanol', 85), 'M85'), []),
  named(blendOf(withGasoline('methanol', 15), 'M15'), []),
  named(blendOf([{ substance: 'isooctane', volumeShare: 1 }]), ['iso-octane']),
  named(blendOf([{ substance: 'toluene', volumeShare: 1 }])),
  named(blendOf([{ substance: 'n-heptane', volumeShare: 1 }]), ['heptane']),
];
