import type { Provenance } from '../quantity/index.ts';
import type { SubstanceId } from './model.ts';

/** One pure substance of fuels, or gasoline, which is a mixture known by its usual figures. */
export interface Substance {
  id: SubstanceId;
  /** Other words for it, in small letters. */
  spellings: readonly string[];
  /** Atoms of a molecule; of gasoline of one carbon atom. */
  carbon: number;
  hydrogen: number;
  oxygen: number;
  /** J/mol at 25 °C; `null`: a mixture, whose heating value and latent heat are stated instead. */
  formationEnthalpy: { liquid: number; gas: number } | null;
  /** J/kg and J/kg at 25 °C, lower, of a mixture. */
  stated: { heatingValue: number; latentHeat: number } | null;
  /** kg/mol where it is not that of the formula: gasoline's mean molecule. */
  meanMolarMass: number | null;
  /** kg/m³, at 15 to 20 °C */
  density: number;
  researchOctane: number;
  motorOctane: number;
  from: Record<'heatingValue' | 'density' | 'latentHeat' | 'octane', Provenance>;
}

const ENTHALPIES: Provenance = {
  kind: 'derived',
  source: 'from formation enthalpies at 25 °C (from memory; they agree with NASA TM-4513 polynomials)',
};
const HANDBOOK: Provenance = { kind: 'from memory', source: 'from memory of handbook tables' };
const PUMP: Provenance = { kind: 'from memory', source: 'from memory: usual pump gasoline' };
const FROM_ENTHALPIES = {
  heatingValue: ENTHALPIES,
  density: HANDBOOK,
  latentHeat: ENTHALPIES,
  octane: HANDBOOK,
};

const KJ = 1e3;
const hydrocarbon = { oxygen: 0, stated: null, meanMolarMass: null, from: FROM_ENTHALPIES } as const;
const alcohol = { oxygen: 1, stated: null, meanMolarMass: null, from: FROM_ENTHALPIES } as const;

/** Every substance, by its id. Octane of the alcohols: middle of the handbooks' ranges (107 to 109 and 106 to 109 by research). */
export const SUBSTANCES: Readonly<Record<SubstanceId, Substance>> = {
  gasoline: {
    id: 'gasoline',
    spellings: ['gasoline', 'petrol', 'gas', 'pump gasoline', 'pump petrol', 'pump gas'],
    carbon: 1,
    hydrogen: 1.87,
    oxygen: 0,
    formationEnthalpy: null,
    stated: { heatingValue: 43.4e6, latentHeat: 350e3 },
    meanMolarMass: 0.105,
    density: 745,
    researchOctane: 95,
    motorOctane: 85,
    from: {
      heatingValue: {
        kind: 'published',
        source:
          'Properties of Fuels, US DOE Alternative Fuels Data Center (18,676 Btu/lb); 42.5 to 44.0 MJ/kg is usual',
      },
      density: PUMP,
      latentHeat: { kind: 'from memory', source: 'from memory: 305 to 380 kJ/kg is usual' },
      octane: PUMP,
    },
  },
  ethanol: {
    ...alcohol,
    id: 'ethanol',
    spellings: ['ethanol', 'ethyl alcohol'],
    carbon: 2,
    hydrogen: 6,
    formationEnthalpy: { liquid: -277.6 * KJ, gas: -234.95 * KJ },
    density: 789,
    researchOctane: 108,
    motorOctane: 89.5,
  },
  methanol: {
    ...alcohol,
    id: 'methanol',
    spellings: ['methanol', 'methyl alcohol'],
    carbon: 1,
    hydrogen: 4,
    formationEnthalpy: { liquid: -238.6 * KJ, gas: -200.94 * KJ },
    density: 792,
    researchOctane: 107.5,
    motorOctane: 90.5,
  },
  isooctane: {
    ...hydrocarbon,
    id: 'isooctane',
    spellings: ['isooctane', 'iso-octane'],
    carbon: 8,
    hydrogen: 18,
    formationEnthalpy: { liquid: -259.3 * KJ, gas: -224.01 * KJ },
    density: 692,
    researchOctane: 100,
    motorOctane: 100,
  },
  'n-heptane': {
    ...hydrocarbon,
    id: 'n-heptane',
    spellings: ['n-heptane', 'heptane'],
    carbon: 7,
    hydrogen: 16,
    formationEnthalpy: { liquid: -224.4 * KJ, gas: -187.8 * KJ },
    density: 684,
    researchOctane: 0,
    motorOctane: 0,
  },
  toluene: {
    ...hydrocarbon,
    id: 'toluene',
    spellings: ['toluene'],
    carbon: 7,
    hydrogen: 8,
    formationEnthalpy: { liquid: 12.0 * KJ, gas: 50.1 * KJ },
    density: 867,
    researchOctane: 119,
    motorOctane: 108,
  },
};
