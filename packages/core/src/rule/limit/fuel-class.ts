import type { EngineAtLimits } from './engine-at-limits.ts';

/** Petrol of more than this research octane is racing petrol. From memory. */
const RACING_OCTANE = 103;
/** Alcohol by volume from which a fuel stands what E85 does. */
const MOSTLY_ALCOHOL = 0.5;

/** Which column of the trade's table holds; `null`: the fuel is not told, or none of it. */
export function fuelClassOf({ input, parts, supply }: EngineAtLimits): 'uncooled' | 'cooled' | 'race' | null {
  if (supply === null) return null;
  const { fuel } = supply;
  const cooled = input === null ? parts.isCooled : input.cooler !== null;
  const alcohol = fuel.parts
    .filter(({ substance }) => substance === 'ethanol' || substance === 'methanol')
    .reduce((sum, { volumeShare }) => sum + volumeShare, 0);
  const isStrong = alcohol >= MOSTLY_ALCOHOL || (fuel.researchOctane ?? 0) > RACING_OCTANE;
  return isStrong ? (cooled ? 'race' : null) : cooled ? 'cooled' : 'uncooled';
}
