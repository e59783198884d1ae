import { choleskyOf, solveWith } from './cholesky.ts';

export interface LeastSquaresFit {
  at: number[];
  /** Inverse of the curvature: the covariance where each residual has a spread of 1. */
  covariance: number[][];
  /** Sum of the squared residuals. */
  squares: number;
  /** Whether the last step was smaller than asked; else the looks ran out. */
  isSettled: boolean;
}

/** Steps of the parameters below this share of `steps` settle the search. */
const SETTLED = 1e-3;
const MOST_LOOKS = 60;

/**
 * The parameters at which the sum of squared residuals is least, by Gauss-Newton steps damped as Levenberg and Marquardt do: the step
 * is shortened until it helps. Derivatives are central differences over `steps`, one for each parameter, which also tell the scale. Residuals
 * that are not finite count as no help. For a handful of parameters.
 *
 * @example leastSquares(([x]) => [x! - 3, 2 * x!], [0], [0.01]).at // [0.6]
 */
export function leastSquares(
  residuals: (at: readonly number[]) => ArrayLike<number>,
  start: readonly number[],
  steps: readonly number[],
): LeastSquaresFit {
  let at = [...start];
  let now = residuals(at);
  let squares = sumOfSquares(now);
  if (!Number.isFinite(squares))
    throw new RangeError('least squares: the start has residuals that are not finite');
  let damping = 1e-3;
  let isSettled = false;
  let normal = normalOf(residuals, at, steps, now);
  for (let look = 0; look < MOST_LOOKS && !isSettled; look++) {
    const damped = normal.matrix.map((line, i) =>
      line.map((value, j) => (i === j ? value * (1 + damping) : value)),
    );
    const step = solveWith(choleskyOf(damped), normal.gradient).map((value) => -value);
    const next = at.map((value, i) => value + step[i]!);
    const tried = residuals(next);
    const better = sumOfSquares(tried);
    isSettled = step.every((value, i) => Math.abs(value) < SETTLED * steps[i]!);
    if (better <= squares) {
      at = next;
      now = tried;
      squares = better;
      damping = Math.max(damping / 10, 1e-12);
      normal = normalOf(residuals, at, steps, now);
    } else damping *= 10;
  }
  const triangle = choleskyOf(normal.matrix);
  const covariance = at.map((_, i) =>
    solveWith(
      triangle,
      at.map((__, j) => (i === j ? 1 : 0)),
    ),
  );
  return { at, covariance, squares, isSettled };
}

const sumOfSquares = (values: ArrayLike<number>): number => {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]! ** 2;
  return sum;
};

function normalOf(
  residuals: (at: readonly number[]) => ArrayLike<number>,
  at: readonly number[],
  steps: readonly number[],
  now: ArrayLike<number>,
): { matrix: number[][]; gradient: number[] } {
  const slopes = steps.map((step, i) => {
    const moved = (by: number) => residuals(at.map((value, j) => (i === j ? value + by : value)));
    const above = moved(step);
    const below = moved(-step);
    return Float64Array.from(now, (here, row) => slopeOf(above[row]!, here, below[row]!, step));
  });
  const dot = (one: ArrayLike<number>, other: ArrayLike<number>) => {
    let sum = 0;
    for (let row = 0; row < one.length; row++) sum += one[row]! * other[row]!;
    return sum;
  };
  return {
    matrix: slopes.map((one) => slopes.map((other) => dot(one, other))),
    gradient: slopes.map((slope) => dot(slope, now)),
  };
}

/** Central where both sides are there, else the one side, else nothing is known. */
function slopeOf(above: number, here: number, below: number, step: number): number {
  if (Number.isFinite(above) && Number.isFinite(below)) return (above - below) / (2 * step);
  if (Number.isFinite(above)) return (above - here) / step;
  return Number.isFinite(below) ? (here - below) / step : 0;
}
