import {
  displayUnit,
  figureOf,
  fromInside,
  KIND_NAME,
  type Origin,
  parseNumber,
  parseQuantity,
  type QuantityKind,
  unitFor,
  unitsOfKind,
  withoutUnit,
} from '../quantity/index.ts';
import {
  accepted,
  type Remark,
  type Result,
  refused,
  remark,
  remarkAbout,
  type Said,
  said,
} from '../remark/index.ts';
import type { SheetEntry } from './fields.ts';
import type { SheetValue } from './model.ts';

const UNKNOWN = /^(unknown|not known|\?|)$/i;

/** An entry without spaces round it; every way to say "unknown" becomes `unknown`. */
export function plainEntry(entered: string): string {
  const text = entered.trim();
  return UNKNOWN.test(text) ? 'unknown' : text;
}

/**
 * Reads what is written for one known field. `place` names it in messages: `shortBlock.bore`.
 *
 * `unknown` and an empty entry are legal and give a value of `null`. Refused: a number without a unit where one is
 * needed, a unit of another kind, a value outside what is possible. A decimal comma is accepted.
 */
export function readFieldValue(
  field: SheetEntry,
  entered: string,
  origin: Origin,
  place: string,
): Result<SheetValue> {
  const text = plainEntry(entered);
  const kind = field.kinds[0];
  if (text === 'unknown') return accepted({ text, value: null, kind, origin });
  if (kind === 'text')
    return accepted({ text, value: null, kind, origin }, notUnderstood(field, text, place));

  const number = kind === 'count' ? readCount(field, text, place) : readQuantity(field, text, place);
  if (!number.ok) return number;
  const range = checkRange(field, number.value, text, place);
  if (!range.ok) return range;
  return accepted({ text, value: number.value.value, kind: number.value.kind, origin }, [
    ...number.remarks,
    ...range.remarks,
  ]);
}

interface ReadNumber {
  value: number;
  kind: QuantityKind | 'count';
}

function readCount(field: SheetEntry, text: string, place: string): Result<ReadNumber> {
  const value = parseNumber(text, 'either');
  if (value !== null && Number.isInteger(value)) return accepted({ value, kind: 'count' });
  return refused(
    remark(
      'refusal',
      'not-a-count',
      `${place}: "${text}" is not a whole number. Write for example ${field.example}.`,
    ),
  );
}

function readQuantity(field: SheetEntry, text: string, place: string): Result<ReadNumber> {
  const bare = parseNumber(text.replace(/\s*:\s*1$/, ''), 'either');
  const kinds = field.kinds as readonly QuantityKind[];
  if (bare !== null && kinds[0] === 'ratio') return accepted({ value: bare, kind: 'ratio' });

  const units = kinds
    .flatMap((kind) => unitsOfKind(kind).map((unit) => unit.name))
    .filter((name) => name !== '');
  const instead = `Write it with a unit, for example "${field.example}" (accepted: ${units.join(', ')}), or "unknown".`;
  if (bare !== null) {
    const message = `${place}: ${text} has no unit, so it could mean several things. ${instead}`;
    return refused(remark('refusal', 'unit-missing', message));
  }
  for (const kind of kinds) {
    const read = parseQuantity(text, kind, { decimalMark: 'either' });
    if (read.ok) return accepted({ value: read.value, kind }, read.remarks);
    const ambiguous = read.remarks.find(({ code }) => code === 'ambiguous-number');
    if (ambiguous) return refused(remarkAbout(place, ambiguous));
  }
  const message = `${place}: "${text}" is not ${KIND_NAME[kinds[0]!]}. ${instead}`;
  return refused(remark('refusal', 'wrong-unit', message));
}

function checkRange(field: SheetEntry, number: ReadNumber, text: string, place: string): Result<null> {
  if (number.kind !== field.kinds[0]) return accepted(null);
  const outside = (range: readonly [number, number] | null) =>
    range !== null && (number.value < range[0] || number.value > range[1]);
  if (outside(field.allowed)) {
    const message = said`${place}: ${text} cannot be; allowed is ${rangeText(field.allowed!, number, text, field.example)}. Check the unit, for example "${field.example}".`;
    return refused(remark('refusal', 'value-impossible', message));
  }
  if (!outside(field.usual)) return accepted(null);
  const message = said`${place}: ${text} is outside the usual ${rangeText(field.usual!, number, text, field.example)}. It is kept; check the number and its unit.`;
  return accepted(null, [remark('caution', 'value-unusual', message)]);
}

function notUnderstood(field: SheetEntry, text: string, place: string): Remark[] {
  if (field.understood.length === 0 || field.understood.includes(text.toLowerCase())) return [];
  const message = `${place}: "${text}" is kept as text; understood are ${field.understood.join(', ')}.`;
  return [remark('note', 'text-not-understood', message)];
}

/** `10 to 1,000 mm`: in the unit that was typed where it is a usual one, else in that of the example. */
function rangeText(
  range: readonly [number, number],
  { kind }: ReadNumber,
  typed: string,
  example: string,
): Said | string {
  if (kind === 'count' || kind === 'ratio') return `${range[0]} to ${range[1]}`;
  const unitOf = (text: string) => unitFor(text.replace(/^[-+\d.,\s]+/, ''), kind);
  const usual = [displayUnit(kind, 'us'), displayUnit(kind, 'si')];
  const unit = usual.find(({ name }) => name === unitOf(typed)?.name) ?? unitOf(example) ?? usual[1]!;
  const units = { us: unit.name, si: unit.name };
  const [low, high] = range.map((value) =>
    figureOf(value, kind, { units, decimals: decimalsToTell(fromInside(value, unit)) }),
  );
  return said`${withoutUnit(low!)} to ${high!}`;
}

/** Whole numbers stay whole; others have three figures to tell them by. */
function decimalsToTell(value: number): number {
  const size = Math.abs(value);
  if (Math.abs(size - Math.round(size)) < 1e-9 * Math.max(1, size)) return 0;
  return size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : 3;
}
