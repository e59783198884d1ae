import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromInside } from './convert.ts';
import { decimalsFor, displayUnit } from './display.ts';
import { formatQuantity } from './format.ts';
import { KIND_NAME } from './kind-name.ts';
import type { QuantityKind } from './model.ts';
import { parseQuantity } from './parse-quantity.ts';

function readOrThrow(text: string, kind: QuantityKind, decimalMark?: '.' | ','): number {
  const result = parseQuantity(text, kind, decimalMark === undefined ? {} : { decimalMark });
  if (!result.ok) throw new Error(result.remarks[0]?.message);
  return result.value;
}

function refusalOf(text: string, kind: QuantityKind) {
  const result = parseQuantity(text, kind);
  if (result.ok) throw new Error(`"${text}" was read as ${result.value}`);
  return result.remarks[0]!;
}

describe('what people write', () => {
  test.each<[string, QuantityKind, number]>([
    ['98.2kPa', 'absolutePressure', 98_200],
    ['30 °C', 'temperature', 303.15],
    ['86 F', 'temperature', 303.15],
    ['45%', 'ratio', 0.45],
    ['0.45', 'ratio', 0.45],
    ['9.5:1', 'ratio', 9.5],
    ['0,85 λ', 'ratio', 0.85],
    ['6 500 rpm', 'engineSpeed', 6500],
    ['5 1/min', 'engineSpeed', 5],
    ['1.2 bar(g)', 'gaugePressure', 120_000],
    ['-3,5 kPa', 'gaugePressure', -3500],
    ['86 mm', 'length', 0.086],
    ['1 min', 'time', 60],
    ['990 mb', 'absolutePressure', 99_000],
  ])('%s', (text, kind, value) => expect(readOrThrow(text, kind)).toBeCloseTo(value, 9));
});

describe('refusals say what is accepted', () => {
  test.each<[string, QuantityKind, string, string]>([
    ['1,234 rpm', 'engineSpeed', 'ambiguous-number', '1.234 or 1234'],
    ['98.2', 'absolutePressure', 'missing-unit', 'kPa, psi, bar'],
    ['12 psia', 'gaugePressure', 'unit-of-another-kind', 'an absolute pressure'],
    ['4 parsec', 'length', 'unknown-unit', 'mm, cm, m'],
    ['fast', 'engineSpeed', 'not-a-number', 'rpm'],
    ['-300 °C', 'temperature', 'below-absolute-zero', '0 K'],
    ['-1 kPa', 'absolutePressure', 'below-absolute-zero', '0 Pa'],
  ])('%s', (text, kind, code, said) => {
    const remark = refusalOf(text, kind);
    expect(remark.code).toBe(code);
    expect(remark.message).toContain(said);
    expect(remark.message).toContain(text.split(' ')[0]!);
  });
});

test('a quantity shown is read back to half its last shown digit, in both systems and with both marks', () => {
  const kinds = Object.keys(KIND_NAME) as QuantityKind[];
  fc.assert(
    fc.property(
      fc.constantFrom(...kinds),
      fc.constantFrom('us' as const, 'si' as const),
      fc.constantFrom('.' as const, ',' as const),
      fc.double({ min: 0, max: 1e5, noNaN: true }),
      (kind, system, decimalMark, value) => {
        const { text } = formatQuantity(value, kind, { system, decimalMark });
        // A temperature near absolute zero may be shown rounded to below it.
        if (kind === 'temperature' && value < 1) return;
        const unit = displayUnit(kind, system);
        const shown = fromInside(value, unit);
        const back = fromInside(readOrThrow(text, kind, decimalMark), unit);
        const half = 0.5 * 10 ** -decimalsFor(kind, system);
        expect(Math.abs(back - shown)).toBeLessThanOrEqual(half + 1e-9 * Math.abs(shown));
      },
    ),
    { seed: 3, numRuns: 2000 },
  );
});
