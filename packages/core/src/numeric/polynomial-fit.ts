import { extentOf } from './extent.ts';

/** A least-squares polynomial about `centre`: y = c0 + c1 u + c2 u², u = x - centre. */
export interface PolynomialFit {
  centre: number;
  coefficients: number[];
  /** Covariance of the coefficients from the scatter about the fit; `null` without a degree of freedom to spare. */
  covariance: number[][] | null;
}

/**
 * Weighted least-squares polynomial through finite pairs. `null` where there are too few different x.
 * Weights are taken as inverse variances up to one common scale, which the scatter gives.
 */
export function fitPolynomial(
  x: readonly number[],
  y: readonly number[],
  degree: 1 | 2,
  weights: readonly number[] = new Array<number>(x.length).fill(1),
): PolynomialFit | null {
  const terms = degree + 1;
  if (fewerThan(terms, x)) return null;
  const [low, high] = extentOf(x);
  const centre = (low + high) / 2;
  const scale = (high - low) / 2;
  // Sums of weight × u^k fill the whole matrix: entry (i, j) is the one of k = i + j.
  const sums = new Float64Array(2 * degree + 1);
  const right = new Float64Array(terms);
  for (let row = 0; row < x.length; row++) {
    const u = (x[row]! - centre) / scale;
    let power = weights[row]!;
    for (let k = 0; k < sums.length; k++) {
      sums[k]! += power;
      if (k < terms) right[k]! += power * y[row]!;
      power *= u;
    }
  }
  const matrix = Array.from({ length: terms }, (_, i) =>
    Array.from({ length: terms }, (_, j) => sums[i + j]!),
  );
  const inverse = invertSymmetric(matrix);
  if (inverse === null) return null;
  const scaled = inverse.map((line) => line.reduce((sum, value, j) => sum + value * right[j]!, 0));
  const spare = x.length - terms;
  let squares = 0;
  for (let row = 0; row < x.length; row++) {
    const u = (x[row]! - centre) / scale;
    const fitted = scaled.reduceRight((sum, coefficient) => sum * u + coefficient, 0);
    squares += weights[row]! * (y[row]! - fitted) ** 2;
  }
  const variance = spare > 0 ? squares / spare : null;
  return {
    centre,
    coefficients: scaled.map((value, i) => value / scale ** i),
    covariance:
      variance === null
        ? null
        : inverse.map((line, i) => line.map((value, j) => (value * variance) / scale ** (i + j))),
  };
}

/** The fitted polynomial at `x`. */
export function polynomialAt(fit: PolynomialFit, x: number): number {
  return fit.coefficients.reduceRight((sum, coefficient) => sum * (x - fit.centre) + coefficient, 0);
}

/** Standard deviation of the fitted polynomial at `x`; `null` where the fit has no spread. */
export function polynomialSpreadAt(fit: PolynomialFit, x: number): number | null {
  if (fit.covariance === null) return null;
  const powers = powersOf(x - fit.centre, fit.coefficients.length);
  let variance = 0;
  for (let i = 0; i < powers.length; i++)
    for (let j = 0; j < powers.length; j++) variance += powers[i]! * fit.covariance[i]![j]! * powers[j]!;
  return Math.sqrt(Math.max(0, variance));
}

/** Whether there are fewer different values than `count`. */
function fewerThan(count: number, values: readonly number[]): boolean {
  const seen = new Set<number>();
  for (const value of values) {
    seen.add(value);
    if (seen.size >= count) return false;
  }
  return true;
}

function powersOf(value: number, terms: number): number[] {
  return Array.from({ length: terms }, (_, power) => value ** power);
}

/**
 * Inverse of the symmetric matrix of a line (2 × 2) or a parabola (3 × 3) by its cofactors; `null` where it has none. The
 * matrix is of x scaled to -1 … 1, so its determinant says how far it is from having none.
 */
function invertSymmetric(matrix: readonly (readonly number[])[]): number[][] | null {
  const [a, b, c] = matrix[0]! as [number, number, number | undefined];
  const [, d, e] = matrix[1]! as [number, number, number | undefined];
  if (c === undefined || e === undefined) {
    const determinant = a * d - b * b;
    if (!(determinant > 1e-12 * a * a)) return null;
    return [
      [d / determinant, -b / determinant],
      [-b / determinant, a / determinant],
    ];
  }
  const f = matrix[2]![2]!;
  const first = d * f - e * e;
  const second = c * e - b * f;
  const third = b * e - c * d;
  const determinant = a * first + b * second + c * third;
  if (!(determinant > 1e-12 * a * a * a)) return null;
  const over = (value: number): number => value / determinant;
  return [
    [over(first), over(second), over(third)],
    [over(second), over(a * f - c * c), over(b * c - a * e)],
    [over(third), over(b * c - a * e), over(a * d - b * b)],
  ];
}
