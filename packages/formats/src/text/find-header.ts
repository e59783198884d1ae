import { cellKind, isMissing } from './cell-number.ts';
import type { Separators } from './sniff-layout.ts';
import { mostCommonWidth } from './sniff-layout.ts';
import { eachRecord, type TextBytes } from './split-records.ts';
import { looksLikeUnit } from './unit-spelling.ts';

const LOOKED_AT_RECORDS = 400;

export interface HeaderPlace {
  /** Names by column; empty where there is no header. */
  names: string[];
  /** Units by column from a row of their own; empty where there is none. */
  units: string[];
  headerLine: number | null;
  unitLine: number | null;
  firstDataLine: number;
  preamble: { line: number; text: string }[];
  /** Fields that most rows of numbers have. */
  dataWidth: number;
}

interface Placed {
  line: number;
  fields: string[];
  kind: 'numbers' | 'words';
  /** Cells that are numbers. */
  numbers: number;
}

/**
 * Where header, row of units and data of a text stand; `null`: there is no row of numbers.
 *
 * Data start at the first row that is mostly numbers, about as wide as most such rows, and not followed by words. The
 * header is the nearest row of words above it that fills at least half of the width; one row of units may stand
 * between. All that stands above is the preamble.
 */
export function findHeader(text: TextBytes, separators: Separators): HeaderPlace | null {
  const records = placedRecords(text, separators);
  const dataWidth = mostCommonWidth(
    records.filter(({ kind }) => kind === 'numbers').map(({ fields }) => fields),
  );
  const start = records.findIndex((record, index) => {
    if (record.kind !== 'numbers' || record.fields.length < dataWidth / 2) return false;
    const next = records[index + 1];
    // The next row may hold a bad cell or none at all; what it may not be is a header.
    return !next || next.numbers > 0 || isMostlyMissing(next.fields);
  });
  const first = records[start];
  if (!first) return null;
  let above = start - 1;
  const fills = (record: Placed | undefined, fields: number): record is Placed =>
    record?.kind === 'words' && filledFields(record.fields) >= Math.max(2, fields);
  // A row whose readings are all missing is already data.
  while (above >= 0 && isMostlyMissing(records[above]?.fields ?? [])) above -= 1;
  const firstDataLine = records[above + 1]?.line ?? first.line;

  let unitRow: Placed | null = null;
  const nearest = records[above];
  if (
    nearest &&
    isUnitRow(nearest.fields) &&
    fills(records[above - 1], 0.75 * filledFields(nearest.fields))
  ) {
    unitRow = nearest;
    above -= 1;
  }
  const candidate = records[above];
  const header = fills(candidate, dataWidth / 2) ? candidate : null;
  const preambleEnd = header ? above : above + 1;
  const preamble = records
    .slice(0, preambleEnd)
    .map(({ line, fields }) => ({ line, text: fields.join(' ').trim() }));
  return {
    names: header ? headerNames(header, text, separators, dataWidth) : [],
    units: unitRow ? unitRow.fields.map((field) => (isMissing(field) ? '' : withoutBrackets(field))) : [],
    headerLine: header?.line ?? null,
    unitLine: unitRow?.line ?? null,
    firstDataLine,
    preamble,
    dataWidth,
  };
}

function placedRecords(text: TextBytes, { delimiter, decimalMark }: Separators): Placed[] {
  const records: Placed[] = [];
  eachRecord(text, delimiter, (fields, line) => {
    if (fields.every((field) => field.trim() === '')) return true;
    let numbers = 0;
    let words = 0;
    for (const field of fields) {
      const kind = cellKind(field, decimalMark);
      if (kind === 'number' || kind === 'clock') numbers += 1;
      else if (kind === 'text') words += 1;
    }
    records.push({ line, fields, kind: numbers > words ? 'numbers' : 'words', numbers });
    return records.length < LOOKED_AT_RECORDS;
  });
  return records;
}

/** No word in it, and at least one of the marks for a missing reading. */
function isMostlyMissing(fields: string[]): boolean {
  return fields.length > 0 && fields.every(isMissing) && fields.some((field) => field.trim() !== '');
}

const filledFields = (fields: string[]): number => fields.filter((field) => !isMissing(field)).length;

function isUnitRow(fields: string[]): boolean {
  const filled = fields.filter((field) => !isMissing(field));
  return filled.length > 0 && filled.filter(looksLikeUnit).length >= 0.6 * filled.length;
}

function withoutBrackets(text: string): string {
  return text
    .trim()
    .replace(/^[[(](.*)[\])]$/s, '$1')
    .trim();
}

/** With spaces as the delimiter a name may hold single spaces itself: then two or more part the names. */
function headerNames(header: Placed, text: TextBytes, { delimiter }: Separators, width: number): string[] {
  if (delimiter !== ' ' || header.fields.length === width) return header.fields;
  const merged: string[] = [];
  for (const field of header.fields) {
    if (/^[[(].*[\])]$/.test(field) && merged.length > 0) merged[merged.length - 1] += ` ${field}`;
    else merged.push(field);
  }
  if (merged.length === width) return merged;
  const wide = lineOf(text, header.line)
    .trim()
    .split(/\s{2,}/);
  return wide.length === width ? wide : merged;
}

function lineOf(text: TextBytes, wanted: number): string {
  let found = '';
  // Parted at tabs and joined by tabs, a line comes back whole.
  eachRecord(text, '\t', (fields, line) => {
    found = fields.join('\t');
    return line < wanted;
  });
  return found;
}
