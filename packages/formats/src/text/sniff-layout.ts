import type { TextLayout } from '../model.ts';
import { cellKind, LONGEST_NUMBER } from './cell-number.ts';
import { eachRecord, type TextBytes } from './split-records.ts';

type Delimiter = TextLayout['delimiter'];

/** Order of preference where two fit equally. */
const CANDIDATES: readonly Delimiter[] = ['\t', ';', '|', ',', ' '];
const SAMPLE_RECORDS = 150;
const SAMPLE_BYTES = 600_000;
const LINE_FEED = 10;

export interface Separators {
  delimiter: Delimiter;
  decimalMark: TextLayout['decimalMark'];
  /** `1,250` may be one thousand or one and a quarter, and nothing in the file tells. */
  decimalMarkAmbiguous: boolean;
}

/**
 * Delimiter and decimal mark of a text: the pair under which most cells of the sampled rows are numbers, with rows
 * alike in width. A comma that parts fields is never the decimal mark of unquoted cells.
 */
export function sniffSeparators(text: TextBytes): Separators {
  const sample = { ...text, bytes: cutAtLineEnd(text.bytes, SAMPLE_BYTES) };
  let best: { delimiter: Delimiter; score: number; rows: string[][] } | null = null;
  for (const delimiter of CANDIDATES) {
    if (!sample.bytes.includes(delimiter.charCodeAt(0))) continue;
    const records = sampleRecords(sample, delimiter);
    const rows = records.filter(isDataLike);
    const score = scoreOf(rows) / Math.max(records.length, 1);
    if (!best || score > best.score) best = { delimiter, score, rows };
  }
  if (!best) {
    const rows = sampleRecords(sample, ';').filter((fields) => fields.length === 1);
    return { delimiter: ',', ...decimalMarkOf(rows, ',') };
  }
  return { delimiter: best.delimiter, ...decimalMarkOf(best.rows, best.delimiter) };
}

/** The first bytes of a text, at most so many, and no half line at their end. */
export function cutAtLineEnd(bytes: Uint8Array, atMost: number): Uint8Array {
  if (bytes.length <= atMost) return bytes;
  const end = bytes.lastIndexOf(LINE_FEED, atMost - 1);
  return bytes.subarray(0, end < 0 ? atMost : end + 1);
}

function sampleRecords(sample: TextBytes, delimiter: Delimiter): string[][] {
  const records: string[][] = [];
  eachRecord(sample, delimiter, (fields) => {
    if (fields.some((field) => field.trim() !== '')) records.push(fields);
    return records.length < SAMPLE_RECORDS;
  });
  return records;
}

const NUMBER = /^[+-\u2212]?(\d+([.,]\d+)*|[.,]\d+)(e[+-]?\d+)?\s*%?$/i;
const looksLikeNumber = (trimmed: string) => trimmed.length <= LONGEST_NUMBER && NUMBER.test(trimmed);
const isNumberInSomeMark = (cell: string) => looksLikeNumber(cell.trim()) || cellKind(cell, '.') === 'clock';
const isTextInBothMarks = (cell: string) => cellKind(cell, '.') === 'text' && cellKind(cell, ',') === 'text';

function isDataLike(fields: string[]): boolean {
  if (fields.length < 2) return false;
  const numbers = fields.filter(isNumberInSomeMark).length;
  return numbers >= 1 && numbers >= fields.filter(isTextInBothMarks).length;
}

function scoreOf(rows: string[][]): number {
  const width = mostCommonWidth(rows);
  let score = 0;
  for (const fields of rows) {
    if (Math.abs(fields.length - width) > 1) continue;
    score += fields.filter(isNumberInSomeMark).length - fields.filter(isTextInBothMarks).length;
  }
  return score;
}

/** The number of fields that most rows have; 0 without rows. */
export function mostCommonWidth(rows: readonly string[][]): number {
  const counts = new Map<number, number>();
  for (const { length } of rows) counts.set(length, (counts.get(length) ?? 0) + 1);
  let width = 0;
  for (const [candidate, count] of counts) {
    const leading = counts.get(width) ?? 0;
    if (count > leading || (count === leading && candidate > width)) width = candidate;
  }
  return width;
}

function decimalMarkOf(
  rows: string[][],
  delimiter: Delimiter,
): Pick<Separators, 'decimalMark' | 'decimalMarkAmbiguous'> {
  let points = 0;
  let commas = 0;
  let thousandsLike = 0;
  let plainAboveThousand = 0;
  for (const fields of rows) {
    for (const field of fields) {
      const cell = field.trim();
      if (!looksLikeNumber(cell)) continue;
      const point = cell.lastIndexOf('.');
      const comma = cell.lastIndexOf(',');
      if (point > comma) points += 1;
      else if (/^[+-]?[1-9]\d{0,2},\d{3}$/.test(cell)) thousandsLike += 1;
      else if (comma > point) commas += 1;
      else if (Math.abs(Number(cell)) >= 1000) plainAboveThousand += 1;
    }
  }
  if (commas > points) return { decimalMark: ',', decimalMarkAmbiguous: false };
  if (points > 0 || thousandsLike === 0) return { decimalMark: '.', decimalMarkAmbiguous: false };
  // Only `1,250` and whole numbers: a semicolon, or a whole number above 1,000 without a mark, says decimal comma.
  const decimal = delimiter === ';' || plainAboveThousand > 0;
  return { decimalMark: decimal ? ',' : '.', decimalMarkAmbiguous: true };
}
