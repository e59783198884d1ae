import type { QuantityKind } from './model.ts';
import type { Unit } from './unit.ts';
import { UNITS, unitFor } from './unit-table.ts';

/**
 * A value in its unit brought to the inside unit of the kind. A unit may be given as a spelling; one that is not in the list
 * throws, since text from outside goes through `parseQuantity` or `unitFor`.
 *
 * @example toInside(100, 'hp') // 74569.987 W
 */
export function toInside(value: number, unit: Unit | string, kind?: QuantityKind): number {
  const { factor, offset } = knownUnit(unit, kind);
  return value * factor + offset;
}

/**
 * A value in the inside unit brought to the unit given.
 *
 * @example fromInside(98_200, 'inHg', 'absolutePressure') // 28.998
 */
export function fromInside(value: number, unit: Unit | string, kind?: QuantityKind): number {
  const { factor, offset } = knownUnit(unit, kind);
  return (value - offset) / factor;
}

function knownUnit(unit: Unit | string, kind: QuantityKind | undefined): Unit {
  if (typeof unit !== 'string') return unit;
  const found = UNITS.find((entry) => entry.id === unit) ?? unitFor(unit, kind);
  if (!found) throw new Error(`unknown unit "${unit}"${kind === undefined ? '' : ` of ${kind}`}`);
  return found;
}
