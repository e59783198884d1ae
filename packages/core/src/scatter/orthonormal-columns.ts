/** Length that a column may keep, as a share, and still count as made of the columns before it. */
const NOTHING_NEW = 1e-9;

/**
 * Adds to an orthonormal basis what columns bring that is new, one direction each, and gives those directions. A column made
 * of earlier ones brings none. Gram and Schmidt's way, taken twice for accuracy.
 *
 * @example with the basis of (1, 1), the column (1, 0) adds (1, -1) / sqrt 2
 */
export function addColumns(basis: Float64Array[], columns: Iterable<Float64Array>): Float64Array[] {
  const added: Float64Array[] = [];
  for (const column of columns) {
    const rest = without(column, basis);
    const left = dot(rest, rest);
    if (!(left > NOTHING_NEW ** 2 * dot(column, column)) || left === 0) continue;
    const length = Math.sqrt(left);
    const direction = rest.map((value) => value / length);
    basis.push(direction);
    added.push(direction);
  }
  return added;
}

/** What is left of a column when all that lies along the basis is taken out. */
export function without(column: Float64Array, basis: readonly Float64Array[]): Float64Array {
  const rest = Float64Array.from(column);
  for (let round = 0; round < 2; round++)
    for (const direction of basis) {
      const along = dot(direction, rest);
      for (let row = 0; row < rest.length; row++) rest[row]! -= along * direction[row]!;
    }
  return rest;
}

export function dot(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  for (let row = 0; row < one.length; row++) sum += one[row]! * other[row]!;
  return sum;
}
