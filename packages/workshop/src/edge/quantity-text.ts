import { parseQuantity, type QuantityKind } from '@pullbook/core/quantity';
import { accepted, type Remark, type Result, remarkAbout } from '@pullbook/core/remark';

/**
 * A quantity given as text with its unit, inside unit. The refusal names the field it was given for.
 *
 * @example quantityFromText('98.2 kPa', 'absolutePressure', 'Air pressure') // 98200
 */
export function quantityFromText(text: string, kind: QuantityKind, field: string): Result<number> {
  const parsed = parseQuantity(text, kind, { decimalMark: 'either' });
  return parsed.ok ? parsed : { ok: false, remarks: namedFor(field, parsed.remarks) };
}

/** As `quantityFromText`; nothing given, or `unknown`, is `null`. */
export function optionalQuantityFromText(
  text: string | null | undefined,
  kind: QuantityKind,
  field: string,
): Result<number | null> {
  return isUnknown(text) ? accepted(null) : quantityFromText(text, kind, field);
}

/** Whether a text says that nothing is known. */
export function isUnknown(text: string | null | undefined): text is null | undefined | '' {
  return text === null || text === undefined || /^\s*(unknown|-)?\s*$/i.test(text);
}

function namedFor(field: string, remarks: Remark[]): Remark[] {
  return remarks.map((one) => remarkAbout(field, one));
}
