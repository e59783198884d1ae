import type { DecimalMark } from './model.ts';

/** What a text says as a number: a value, or two values that cannot be told apart, or nothing. */
export type NumberReading =
  | { state: 'value'; value: number }
  | { state: 'ambiguous'; withComma: number; grouped: number }
  | { state: 'not a number' };

/**
 * The number a text stands for, `null` where it is none or could be two.
 * `either` takes a point as the decimal mark, and a comma too where it cannot part thousands: `29,92`, `0,850`, `1234,5`.
 * `1,234` could be both and gives `null`. Groups of three may be parted by the other mark, a space or a thin space.
 *
 * @example parseNumber('1.234,5', ',') // 1234.5
 */
export function parseNumber(text: string, decimalMark: DecimalMark | 'either'): number | null {
  const reading = readNumber(text, decimalMark);
  return reading.state === 'value' ? reading.value : null;
}

/** As `parseNumber`, telling "could be two" from "is none". */
export function readNumber(text: string, decimalMark: DecimalMark | 'either'): NumberReading {
  const plain = text.trim().replace(/[−–]/gu, '-');
  if (decimalMark !== 'either') return readWithMark(plain, decimalMark);
  if (AMBIGUOUS.test(plain)) {
    return {
      state: 'ambiguous',
      withComma: Number(plain.replace(',', '.')),
      grouped: Number(plain.replace(',', '')),
    };
  }
  const withPoint = readWithMark(plain, '.');
  return withPoint.state === 'value' ? withPoint : readWithMark(plain, ',');
}

/** One comma with three digits after it and one to three before, not led by a zero. */
const AMBIGUOUS = /^[+-]?[1-9]\d{0,2},\d{3}$/;

const SPACE = '[ \\u00a0\\u2009\\u202f]';
const FORM: Record<DecimalMark, RegExp> = { '.': numberForm('\\.', ','), ',': numberForm(',', '\\.') };

function numberForm(mark: string, otherMark: string): RegExp {
  const grouped = (separator: string) => `[1-9]\\d{0,2}(?:${separator}\\d{3})+`;
  const whole = `(?:\\d+|${grouped(otherMark)}|${grouped(SPACE)})`;
  return new RegExp(`^[+-]?(?:${whole}(?:${mark}\\d*)?|${mark}\\d+)(?:[eE][+-]?\\d+)?$`, 'u');
}

function readWithMark(plain: string, mark: DecimalMark): NumberReading {
  if (!FORM[mark].test(plain)) return { state: 'not a number' };
  const other = mark === '.' ? ',' : '.';
  const value = Number(plain.replaceAll(other, '').replace(/\s/gu, '').replace(mark, '.'));
  return Number.isFinite(value) ? { state: 'value', value } : { state: 'not a number' };
}
