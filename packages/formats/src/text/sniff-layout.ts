import type { TextLayout } from '../model.ts';
import { cellKind } from './cell-number.ts';
import { eachRecord } from './split-records.ts';

type Delimiter = TextLayout['delimiter'];

/** Order of preference where two fit equally. */
const CANDIDATES: readonly Delimiter[] = ['\t', ';', '|', ',', ' '];
const SAMPLE_RECORDS = 150;
const SAMPLE_CHARACTERS = 600_000;

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
export function sniffSeparators(text: string): Separators {
  const sample = cutAtLineEnd(text);
  let best: { delimiter: Delimiter; score: number; rows: string[][] } | null = null;
  for (const delimiter of CANDIDATES) {
    if (!sample.includes(delimiter)) continue;
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

function cutAtLineEnd(text: string): string {
  if (text.length <= SAMPLE_CHARACTERS) return text;
  const end = text.lastIndexOf('\n', SAMPLE_CHARACTERS);
  return text.slice(0, end < 0 ? SAMPLE_CHARACTERS : end);
}

function sampleRecords(sample: string, delimiter: Delimiter): string[][] {
  const records: string[][] = [];
  eachRecord(sample, delimiter, (fields) => {
    if (fields.some((field) => field.trim() !== '')) records.push(fields);
    return records.length < SAMPLE_RECORDS;
  });
  return records;
}

const NUMBER = /^\s*[+-\u2212]?(\d+([.,]\d+)*|[.,]\d+)(e[+-]?\d+)?\s*%?\s*$/i;
const isNumberInSomeMark = (cell: string) => NUMBER.test(cell) || cellKind(cell, '.') === 'clock';
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
      if (!NUMBER.test(cell)) continue;
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
