import { fCdf } from '../numeric/f-distribution.ts';
import { mean } from '../numeric/mean.ts';

/** Scatter of values in groups, taken apart. Squares in the values' unit squared. */
export interface BetweenAndWithin {
  between: { squares: number; degreesOfFreedom: number };
  within: { squares: number; degreesOfFreedom: number };
  /** Mean square between over that within; `null` where a side has no degree of freedom or nothing scatters within. */
  f: number | null;
  /** Chance of so large an F where the groups are alike. */
  p: number | null;
}

/**
 * One-way analysis of variance: how far groups' means lie apart, against how far values lie apart within their groups. Empty
 * groups do not count. Values are taken from their common mean first, so that a large level costs no digits.
 *
 * @example betweenAndWithin([[1, 2, 3], [2, 3, 4]]) // squares 1.5 between (1), 4 within (4)
 */
export function betweenAndWithin(groups: readonly (readonly number[])[]): BetweenAndWithin {
  const filled = groups.filter((group) => group.length > 0);
  const values = filled.flat();
  if (values.length === 0) throw new RangeError('no group holds a value: at least one is needed');
  const wrong = values.find((value) => !Number.isFinite(value));
  if (wrong !== undefined) throw new RangeError(`a value is ${wrong}: all must be finite`);
  const centre = mean(values);
  const centred = filled.map((group) => group.map((value) => value - centre));
  // What rounding left of the mean of the centred values.
  const rest = mean(centred.flat());
  let between = 0;
  let within = 0;
  for (const group of centred) {
    const own = mean(group);
    between += group.length * (own - rest) ** 2;
    for (const value of group) within += (value - own) ** 2;
  }
  const dfBetween = filled.length - 1;
  const dfWithin = values.length - filled.length;
  const f = dfBetween > 0 && within > 0 ? between / dfBetween / (within / dfWithin) : null;
  return {
    between: { squares: between, degreesOfFreedom: dfBetween },
    within: { squares: within, degreesOfFreedom: dfWithin },
    f,
    p: f === null ? null : f === 0 ? 1 : fCdf(1 / f, dfWithin, dfBetween),
  };
}
