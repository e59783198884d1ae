import type { UsualRange } from '@pullbook/core/fuel';
import { fromInside, type QuantityKind } from '@pullbook/core/quantity';
import { edgeNumber } from './number.ts';

export type Figure = number | null;

/** A figure with its ends, inside unit. */
export type Ends = Pick<UsualRange, 'low' | 'usual' | 'high'>;

export const PRACTICE = 'common practice, no source';

/** The same of each of the three. */
export const each = ({ low, usual, high }: Ends, of: (one: number) => number): Ends => ({
  low: of(low),
  usual: of(usual),
  high: of(high),
});

/** A figure in the unit of the edge. */
export const figureIn = (value: number | null, unit: string, kind: QuantityKind): Figure =>
  value === null ? null : edgeNumber(fromInside(value, unit, kind));

/** `name`, `nameLow` and `nameHigh` in the unit of the edge. */
export function endsOf<Name extends string>(
  name: Name,
  ends: Ends | null,
  unit: string,
  kind: QuantityKind,
): Record<Name | `${Name}Low` | `${Name}High`, Figure> {
  return {
    [name]: figureIn(ends?.usual ?? null, unit, kind),
    [`${name}Low`]: figureIn(ends?.low ?? null, unit, kind),
    [`${name}High`]: figureIn(ends?.high ?? null, unit, kind),
  } as Record<Name | `${Name}Low` | `${Name}High`, Figure>;
}
