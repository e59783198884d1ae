import { type Remark, remark } from '../remark/index.ts';
import { KIND_NAME } from './kind-name.ts';
import type { QuantityKind } from './model.ts';
import type { Unit } from './unit.ts';
import { unitsOfKind } from './unit-table.ts';

/** Every message of this folder, by name. */
export const quantityMessage = {
  notANumber: (text: string, kind: QuantityKind): Remark =>
    remark(
      'refusal',
      'not-a-number',
      `"${text}" does not begin with a number. Enter ${KIND_NAME[kind]} as a number and a unit; units accepted: ${acceptedUnits(kind)}.`,
    ),

  ambiguousNumber: (text: string, withComma: number, grouped: number): Remark =>
    remark(
      'refusal',
      'ambiguous-number',
      `"${text}" could mean ${withComma} or ${grouped}. Write ${withComma} with a point, or ${grouped} without a mark between the thousands.`,
    ),

  missingUnit: (text: string, kind: QuantityKind): Remark =>
    remark(
      'refusal',
      'missing-unit',
      `"${text}" has no unit. Write the unit of ${KIND_NAME[kind]} behind the number; accepted: ${acceptedUnits(kind)}.`,
    ),

  unknownUnit: (text: string, spelling: string, kind: QuantityKind): Remark =>
    remark(
      'refusal',
      'unknown-unit',
      `"${text}": "${spelling}" is not a known unit for ${KIND_NAME[kind]}. Accepted: ${acceptedUnits(kind)}.`,
    ),

  unitOfAnotherKind: (text: string, spelling: string, kind: QuantityKind, other: Unit): Remark =>
    remark(
      'refusal',
      'unit-of-another-kind',
      `"${text}": "${spelling}" is a unit for ${KIND_NAME[other.kind]}, but ${KIND_NAME[kind]} is wanted. Accepted: ${acceptedUnits(kind)}.`,
    ),

  belowZeroPoint: (text: string, kind: QuantityKind, lowest: string): Remark =>
    remark(
      'refusal',
      'below-absolute-zero',
      `"${text}" lies below the lowest possible value of ${KIND_NAME[kind]}, ${lowest}. Check the value, its sign and its unit.`,
    ),
};

function acceptedUnits(kind: QuantityKind): string {
  return unitsOfKind(kind)
    .map((entry) => (entry.name === '' ? 'no unit' : entry.name))
    .join(', ');
}
