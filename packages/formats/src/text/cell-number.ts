import { secondsFromClock } from './clock-time.ts';

/** What a cell holds. `missing`: the file says there is no value. */
export type CellKind = 'number' | 'clock' | 'missing' | 'text';

const MISSING = new Set([
  '',
  '-',
  '--',
  '---',
  '–',
  '—',
  '.',
  '?',
  '*',
  '**',
  '***',
  '****',
  '*****',
  'n/a',
  'na',
  'n.a.',
  'nan',
  '-nan',
  'nil',
  'none',
  'null',
  '#n/a',
  '#n/v',
  '#nv',
  '#na',
  '#div/0!',
  '#value!',
  '#wert!',
  '#ref!',
  '#num!',
  'inf',
  '-inf',
  '+inf',
  'infinity',
  '-infinity',
  'void',
  'k.a.',
  'nd',
  'n.d.',
]); // prettier-ignore

/** Whether the cell is one of the ways a file says that there is no value. */
export function isMissing(cell: string): boolean {
  return cell === '' || MISSING.has(cell.trim().toLowerCase());
}

/**
 * Number of a cell, NaN where it holds none. The plain form is tried first, since a log has a million of them; then
 * thousands marks, a real minus sign, a trailing per cent sign, and a decimal mark that is not the file's.
 *
 * @example cellNumber('1.234,5', ',') // 1234.5
 */
export function cellNumber(cell: string, decimalMark: '.' | ','): number {
  const plain = decimalMark === ',' ? plainFromComma(cell) : Number(cell);
  if (Number.isNaN(plain)) return unusualNumber(cell, decimalMark);
  if (plain === 0 && !cell.includes('0')) return Number.NaN; // `Number` takes a blank cell for 0
  return Number.isFinite(plain) && isPlainDecimal(cell) ? plain : Number.NaN;
}

/** What kind of cell this is, for finding the layout. */
export function cellKind(cell: string, decimalMark: '.' | ','): CellKind {
  if (isMissing(cell)) return 'missing';
  if (!Number.isNaN(cellNumber(cell, decimalMark))) return 'number';
  return secondsFromClock(cell) === null ? 'text' : 'clock';
}

function plainFromComma(cell: string): number {
  const comma = cell.indexOf(',');
  if (cell.includes('.')) return Number.NaN;
  return Number(comma < 0 ? cell : `${cell.slice(0, comma)}.${cell.slice(comma + 1)}`);
}

/** `Number` also takes hexadecimal, binary and octal (`0x1A`, `0b1`, `0o7`), which no log means. */
function isPlainDecimal(cell: string): boolean {
  const second = cell.charCodeAt(1) | 32;
  return second !== 120 && second !== 98 && second !== 111;
}

/** The largest double has 309 digits. Patterns take long over what is longer and no number. */
export const LONGEST_NUMBER = 400;

// No group of thousands begins with 0: `0.880` in a file of decimal commas is a fraction.
const THOUSANDS_BY_COMMA = /^[+-]?[1-9]\d{0,2}(,\d{3})+(\.\d+)?$/;
const THOUSANDS_BY_POINT = /^[+-]?[1-9]\d{0,2}(\.\d{3})+(,\d+)?$/;
const THOUSANDS_BY_BLANK = /^[+-]?[1-9]\d{0,2}([\u0020\u00a0\u202f\u2009'\u2019]\d{3})+([.,]\d+)?$/;
const PLAIN = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

function unusualNumber(cell: string, decimalMark: '.' | ','): number {
  const trimmed = cell.trim();
  if (trimmed.length > LONGEST_NUMBER) return Number.NaN;
  let text = trimmed.replace('\u2212', '-').replace(/\s*%$/, '');
  if (THOUSANDS_BY_BLANK.test(text)) text = text.replace(/[\u0020\u00a0\u202f\u2009'\u2019]/g, '');
  if (decimalMark === '.') {
    if (THOUSANDS_BY_COMMA.test(text)) text = text.replaceAll(',', '');
    else if (THOUSANDS_BY_POINT.test(text) && text.includes(','))
      text = text.replaceAll('.', '').replace(',', '.');
  } else if (THOUSANDS_BY_POINT.test(text)) text = text.replaceAll('.', '').replace(',', '.');
  else if (THOUSANDS_BY_COMMA.test(text) && text.includes('.')) text = text.replaceAll(',', '');
  if (!text.includes('.')) text = text.replace(/,(?=\d)/, '.');
  text = text.replace(/^([+-]?[\d.]+)d([+-]?\d+)$/i, '$1e$2');
  const value = PLAIN.test(text) ? Number(text) : Number.NaN;
  return Number.isFinite(value) ? value : Number.NaN;
}
