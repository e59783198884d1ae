import type { QuantityKind } from './model.ts';

/** Key of the closed table: `kind/name`, as in `torque/lb-ft`. */
export type UnitId = string;

/** One unit of one kind. Value in the inside unit = value × factor + offset. */
export interface Unit {
  id: UnitId;
  kind: QuantityKind;
  /** As shown to people: `lb-ft`. Also the first spelling. */
  name: string;
  /** Every accepted spelling; spaces, dots, brackets and mostly case are forgiven on top. */
  spellings: readonly string[];
  factor: number;
  offset: number;
  /** Set where another case would be another unit of the trade: `MPa`, which is not millipascal. */
  exactCase?: true;
}

/** Makes one row of a unit table; `otherSpellings` are separated by ` | `. */
export function unit(
  kind: QuantityKind,
  name: string,
  factor: number,
  otherSpellings = '',
  more: { offset?: number; exactCase?: true } = {},
): Unit {
  const others = otherSpellings === '' ? [] : otherSpellings.split(' | ');
  const { offset = 0, ...rest } = more;
  return { id: `${kind}/${name}`, kind, name, spellings: [name, ...others], factor, offset, ...rest };
}
