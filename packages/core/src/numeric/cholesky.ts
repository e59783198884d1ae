/**
 * Lower triangle L with L Lᵀ = `matrix`, which must be symmetric and positive definite; throws where it is not. For small
 * matrices, as lines.
 *
 * @example choleskyOf([[4, 2], [2, 5]]) // [[2, 0], [1, 2]]
 */
export function choleskyOf(matrix: readonly ArrayLike<number>[]): number[][] {
  const size = matrix.length;
  const lower: number[][] = [];
  for (let i = 0; i < size; i++) {
    if (matrix[i]!.length !== size)
      throw new RangeError(`line ${i + 1} has ${matrix[i]!.length} values: a square matrix needs ${size}`);
    const line = new Array<number>(size).fill(0);
    for (let j = 0; j <= i; j++) {
      const other = j === i ? line : lower[j]!;
      let rest = matrix[i]![j]!;
      for (let k = 0; k < j; k++) rest -= line[k]! * other[k]!;
      if (j < i) line[j] = rest / other[j]!;
      else if (rest > 0 && rest < Number.POSITIVE_INFINITY) line[i] = Math.sqrt(rest);
      else throw new RangeError(`matrix is not positive definite: pivot ${i + 1} is ${rest}`);
    }
    lower.push(line);
  }
  return lower;
}

/**
 * The x with L Lᵀ x = `right`, for the triangle of {@link choleskyOf}.
 *
 * @example solveWith(choleskyOf([[4, 2], [2, 5]]), [8, 12]) // [1, 2]
 */
export function solveWith(lower: readonly ArrayLike<number>[], right: ArrayLike<number>): number[] {
  const size = lower.length;
  if (right.length !== size)
    throw new RangeError(`right side has ${right.length} values: the matrix needs ${size}`);
  const x = Array.from(right);
  for (let i = 0; i < size; i++) {
    for (let k = 0; k < i; k++) x[i]! -= lower[i]![k]! * x[k]!;
    x[i]! /= lower[i]![i]!;
  }
  for (let i = size - 1; i >= 0; i--) {
    for (let k = i + 1; k < size; k++) x[i]! -= lower[k]![i]! * x[k]!;
    x[i]! /= lower[i]![i]!;
  }
  return x;
}
