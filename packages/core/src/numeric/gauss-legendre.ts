/** Points in -1 … 1 and their weights: the weighted sum of a function is its integral there. */
export interface QuadratureRule {
  nodes: Float64Array;
  weights: Float64Array;
}

const remembered = new Map<number, QuadratureRule>();

/**
 * Gauss-Legendre rule of `count` points, exact for polynomials of degree 2 count - 1. Roots of the Legendre polynomial by
 * Newton's method from Tricomi's start (Abramowitz and Stegun 25.4.29 and 22.16.6, from memory). Rules are remembered.
 *
 * @example gaussLegendre(2).nodes // -0.577…, 0.577…
 */
export function gaussLegendre(count: number): QuadratureRule {
  if (!Number.isInteger(count) || count < 1)
    throw new RangeError(`count of points is ${count}: it must be a whole number of 1 or more`);
  const known = remembered.get(count);
  if (known !== undefined) return known;
  const nodes = new Float64Array(count);
  const weights = new Float64Array(count);
  for (let i = 0; i < Math.ceil(count / 2); i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 1;
    for (let step = 0; step < 50; step++) {
      const { value, derivative } = legendre(count, x);
      slope = derivative;
      const change = value / derivative;
      x -= change;
      if (Math.abs(change) < 1e-15) break;
    }
    nodes[i] = -x;
    nodes[count - 1 - i] = x;
    weights[i] = 2 / ((1 - x * x) * slope * slope);
    weights[count - 1 - i] = weights[i]!;
  }
  if (count % 2 === 1) nodes[(count - 1) / 2] = 0;
  const rule = { nodes, weights };
  remembered.set(count, rule);
  return rule;
}

/** Legendre polynomial of the degree and its derivative, by the three-term recursion. */
function legendre(degree: number, x: number): { value: number; derivative: number } {
  let before = 1;
  let value = x;
  for (let k = 2; k <= degree; k++) {
    const next = ((2 * k - 1) * x * value - (k - 1) * before) / k;
    before = value;
    value = next;
  }
  return { value, derivative: (degree * (x * value - before)) / (x * x - 1) };
}
