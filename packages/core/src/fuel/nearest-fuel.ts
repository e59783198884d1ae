import { NAMED_FUELS } from './named-fuels.ts';

/** Name of the fuel that is written most like a word; `null`: none is near. `plain`: how words are compared. */
export function nearestFuel(wanted: string, plain: (text: string) => string): string | null {
  const near = NAMED_FUELS.flatMap(({ fuel, spellings }) =>
    [fuel.name, ...spellings].map((word) => ({ name: fuel.name, steps: stepsBetween(plain(word), wanted) })),
  );
  const [nearest] = near.sort((one, other) => one.steps - other.steps);
  return nearest !== undefined && nearest.steps <= Math.max(2, wanted.length / 3) ? nearest.name : null;
}

/** Letters to put in, take out or change to come from one word to the other. */
function stepsBetween(one: string, other: string): number {
  let row = Array.from({ length: other.length + 1 }, (_, column) => column);
  for (let line = 1; line <= one.length; line++) {
    const next = [line];
    for (let column = 1; column <= other.length; column++)
      next.push(
        Math.min(
          row[column]! + 1,
          next[column - 1]! + 1,
          row[column - 1]! + (one[line - 1] === other[column - 1] ? 0 : 1),
        ),
      );
    row = next;
  }
  return row[other.length]!;
}
