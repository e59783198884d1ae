import { type Combination, type CombinationSheet, whatChanged } from '@pullbook/core/combination';
import { engineDifferences, superchargerDifferences } from './engine-alone.ts';

/**
 * Whose fit a combination takes that has no boosted pull of its own: the nearest of the same engine with the same
 * supercharger, since its head and what the engine swallows stay as they are behind another pulley or cooler. `null`: none.
 */
export function chooseDonor({ id, sheet }: Combination, pulled: readonly Combination[]): Combination | null {
  const same = pulled
    .filter((one) => one.id !== id && isSameUnit(one, sheet))
    .map((one) => ({
      one,
      far:
        10 * engineDifferences(one.sheet, sheet).length +
        superchargerDifferences(one.sheet, sheet).length +
        ratioApart(one.sheet, sheet),
    }))
    .sort((a, b) => a.far - b.far);
  return same[0]?.one ?? null;
}

/** How far two drives turn the blower apart, as a share below 1: of equal set-ups the next pulley tells most. */
function ratioApart(one: CombinationSheet, other: CombinationSheet): number {
  const ratioOf = ({ sections: { drive } }: CombinationSheet) =>
    (drive?.crankPulleyDiameter?.value ?? Number.NaN) / (drive?.blowerPulleyDiameter?.value ?? Number.NaN);
  const apart = Math.abs(Math.log(ratioOf(one) / ratioOf(other)));
  return Number.isFinite(apart) ? Math.min(apart, 0.9) : 0.9;
}

/** Lines that make one unit; gears, pulleys and pipes are changed about it, and what is known of its map makes it no other. */
const OF_THE_UNIT = ['type', 'unit', 'wheelInletDiameter', 'wheelExitDiameter', 'blades', 'backsweep'];

/** Whether a combination has the very supercharger of a sheet, by what makes one unit. */
export const isSameUnit = (one: Combination, sheet: Combination['sheet']): boolean =>
  one.sheet.sections.supercharger !== undefined &&
  whatChanged(one.sheet, sheet, []).every(
    ({ section, field }) => section !== 'supercharger' || !OF_THE_UNIT.includes(field),
  );
