import { accepted, type Result, refused } from '../remark/index.ts';
import { toInside } from './convert.ts';
import { quantityMessage } from './messages.ts';
import type { DecimalMark, QuantityKind } from './model.ts';
import { readNumber } from './parse-number.ts';
import { unitFor, unitsFor } from './unit-table.ts';

/**
 * The value of a text with number and unit, in the inside unit of the kind. Refuses, with what is accepted: no number, a number
 * that could be two (`1,234` unless the mark is given), no unit where the kind has one, an unknown unit, a unit of another kind
 * (`psia` for a gauge pressure), a temperature or absolute pressure below zero.
 *
 * @param options.decimalMark  default `either`: point, and comma where it can only be a decimal mark
 * @example parseQuantity('29,92 inHg', 'absolutePressure') // { ok: true, value: 101320.748…, remarks: [] }
 */
export function parseQuantity(
  text: string,
  kind: QuantityKind,
  options: { decimalMark?: DecimalMark | 'either' } = {},
): Result<number> {
  const parts = NUMBER_THEN_UNIT.exec(text.trim());
  if (!parts) return refused(quantityMessage.notANumber(text, kind));
  const [, numberText = '', spelling = ''] = parts;

  const reading = readNumber(numberText, options.decimalMark ?? 'either');
  if (reading.state === 'not a number') return refused(quantityMessage.notANumber(text, kind));
  if (reading.state === 'ambiguous') {
    return refused(quantityMessage.ambiguousNumber(numberText.trim(), reading.withComma, reading.grouped));
  }

  const unit = unitFor(spelling, kind);
  if (!unit) return refused(whyNoUnit(text, spelling, kind));
  const value = toInside(reading.value, unit);
  if (!(value >= 0) && kind === 'temperature')
    return refused(quantityMessage.belowZeroPoint(text, kind, '0 K'));
  if (!(value >= 0) && kind === 'absolutePressure') {
    return refused(quantityMessage.belowZeroPoint(text, kind, '0 Pa'));
  }
  return accepted(value);
}

/** A space stands inside a number only before a full group of three digits, so `6 1000 rpm` and `5 1/min` part rightly. */
const NUMBER_THEN_UNIT =
  /^([+\-−]?(?:\d[\d.,]*(?:[ \u00a0\u2009\u202f]\d{3}(?!\d))*(?:[.,]\d+)?|[.,]\d+)(?:[eE][+-]?\d+)?)\s*(.*)$/su;

function whyNoUnit(text: string, spelling: string, kind: QuantityKind) {
  if (spelling === '') return quantityMessage.missingUnit(text, kind);
  const [other] = unitsFor(spelling);
  return other
    ? quantityMessage.unitOfAnotherKind(text, spelling, kind, other)
    : quantityMessage.unknownUnit(text, spelling, kind);
}
