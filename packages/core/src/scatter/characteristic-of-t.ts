import { scaleRule } from '../numeric/scale-rule.ts';

/** Where the grid of `ln u` begins and ends: below, nothing has fallen off yet; above, all has. */
const FROM = Math.log(5e-4);
const TO = Math.log(50);
/** Chance of a scale that does not count. */
const NEGLIGIBLE = 1e-9;
const MOST_REMEMBERED = 300;

/** By step, of which there are two. */
const grids = new Map<number, Float64Array>();
/** By step and degrees of freedom. */
const remembered = new Map<string, Float64Array>();

/** Even steps of `ln u` at which characteristic functions are read; to be read only. */
export function gridOfU(step: number): Float64Array {
  const known = grids.get(step);
  if (known !== undefined) return known;
  const grid = new Float64Array(Math.ceil((TO - FROM) / step) + 1);
  for (let row = 0; row < grid.length; row++) grid[row] = Math.exp(FROM + row * step);
  grids.set(step, grid);
  return grid;
}

/**
 * Multiplies values on `gridOfU(step)` by the characteristic function of √share times Student's t: the mean of
 * exp(-u² share / 2 S²) over the scale S. A share only moves it along `ln u`, so that one table a degree of freedom serves all;
 * between its rows a cubic is laid through four.
 */
export function timesCharacteristicOfT(
  values: Float64Array,
  { share, degreesOfFreedom }: { share: number; degreesOfFreedom: number },
  step: number,
): void {
  const table = tableOf(degreesOfFreedom, step);
  // At the grid's row k the table's row k + moved, and the fraction of a step from there.
  const shift = Math.log(share) / 2 / step;
  const moved = Math.floor(shift);
  const t = shift - moved;
  const before = (-t * (t - 1) * (t - 2)) / 6;
  const here = ((t + 1) * (t - 1) * (t - 2)) / 2;
  const after = (-(t + 1) * t * (t - 2)) / 2;
  const beyond = ((t + 1) * t * (t - 1)) / 6;
  for (let row = 0; row < values.length; row++) {
    const at = row + moved;
    if (at < 1) continue;
    values[row]! *=
      before * table[at - 1]! + here * table[at]! + after * table[at + 1]! + beyond * table[at + 2]!;
  }
}

function tableOf(degreesOfFreedom: number, step: number): Float64Array {
  const key = `${step} ${degreesOfFreedom}`;
  const known = remembered.get(key);
  if (known !== undefined) return known;
  const { scales, weights } = scaleRule(degreesOfFreedom);
  const count = Math.ceil((TO - FROM) / step) + 3;
  const table = new Float64Array(count).fill(1);
  for (let row = 0; row < count; row++) {
    const half = Math.exp(2 * (FROM + row * step)) / 2;
    let sum = 0;
    for (let at = 0; at < scales.length; at++)
      if (weights[at]! > NEGLIGIBLE) sum += weights[at]! * Math.exp(-half / (scales[at]! * scales[at]!));
    table[row] = sum;
  }
  if (remembered.size >= MOST_REMEMBERED) remembered.clear();
  remembered.set(key, table);
  return table;
}
