/**
 * A fitted map's columns stand on equal steps of tip Mach number from 0, so that a speed line is read off in no time and what must rise with
 * speed can be made to. Beyond the last node the dimensionless columns stay as they are there.
 */
export const MACH_NODES = 121;

/** Tip Mach number of each node, up to `highest`. */
export const machNodes = (highest: number): number[] =>
  Array.from({ length: MACH_NODES }, (_, node) => (node * highest) / (MACH_NODES - 1));

/** A column at a place, on the straight line between its nodes. */
export function readColumn(column: readonly number[], place: number): number {
  const node = place >= MACH_NODES - 1 ? MACH_NODES - 2 : place | 0;
  const low = column[node]!;
  return low + (place - node) * (column[node + 1]! - low);
}

/** The column, never falling: what is pressed below its forerunner is lifted to it. */
export function neverFalling(column: readonly number[]): number[] {
  let highest = Number.NEGATIVE_INFINITY;
  return column.map((value) => {
    highest = Math.max(highest, value);
    return highest;
  });
}
