/**
 * What a ribbed belt serves, by its ribs: power at the crankshaft that drives the supercharger, W (40 to 45, 60 to 75, 80 to 110 hp).
 * Common practice, no source; ten and twelve ribs are told in one breath. Wrap, tension and age move it.
 */
const SERVED: readonly { ribs: number; usual: number; most: number }[] = [
  { ribs: 6, usual: 29_800, most: 33_600 },
  { ribs: 8, usual: 44_700, most: 55_900 },
  { ribs: 10, usual: 59_700, most: 82_000 },
];

export interface BeltClass {
  /** The least ribs of the table that serve this power; `null`: beyond a ribbed belt, teeth or gears. */
  ribsNeeded: number | null;
  /** W, up to which the belt at hand is known to serve; `null`: its ribs are not known or not in the table. */
  usual: number | null;
  most: number | null;
}

/**
 * Which ribbed belt serves a drive power, W, by the trade's table; with what the ribs at hand serve.
 *
 * @example beltClassFor(50_000, 8) // { ribsNeeded: 8, usual: 44_700, most: 55_900 }
 */
export function beltClassFor(drivePower: number, ribs: number | null): BeltClass {
  const needed = SERVED.find(({ most }) => drivePower <= most);
  const own = ribs === null ? undefined : SERVED.findLast((row) => row.ribs <= ribs);
  return { ribsNeeded: needed?.ribs ?? null, usual: own?.usual ?? null, most: own?.most ?? null };
}
