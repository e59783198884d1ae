/**
 * A smooth function replaced by the polynomial through its values at Chebyshev's points of an interval: dear to ask, cheap
 * afterwards. Barycentric formula of Berrut and Trefethen 2004, from memory.
 *
 * @example interpolantOf(Math.exp, { low: 0, high: 1, points: 12 })(0.5) // √e to 1e-12
 */
export function interpolantOf(
  of: (x: number) => number,
  { low, high, points }: { low: number; high: number; points: number },
): (x: number) => number {
  const at = new Float64Array(points);
  const value = new Float64Array(points);
  for (let k = 0; k < points; k++) {
    at[k] = (low + high) / 2 - ((high - low) / 2) * Math.cos((Math.PI * k) / (points - 1));
    value[k] = of(at[k]!);
  }
  return (x) => {
    let above = 0;
    let below = 0;
    for (let k = 0; k < points; k++) {
      const away = x - at[k]!;
      if (away === 0) return value[k]!;
      const weight = (k % 2 === 0 ? 1 : -1) / away / (k === 0 || k === points - 1 ? 2 : 1);
      above += weight * value[k]!;
      below += weight;
    }
    return above / below;
  };
}
