import { parse } from 'csv-parse/sync';
import type { TextLayout } from '../model.ts';

type Delimiter = TextLayout['delimiter'];

/** Lines handed to the splitter at once: few enough that a long log never stands in memory as strings. */
const LINES_AT_ONCE = 2000;
/** A quoted field that runs on longer than this is a stray quote (an inch mark), not a field. */
const LONGEST_QUOTED_LINES = 60;

/** Sees one record; `false` stops the walk. `line` is the 1-based line on which the record starts. */
export type RecordVisitor = (fields: string[], line: number) => boolean | undefined;

/**
 * Walks the records of a delimited text whose lines end in `\n`. A quoted field may hold delimiters and line breaks.
 * With a space as the delimiter, runs of spaces count as one.
 */
export function eachRecord(text: string, delimiter: Delimiter, visit: RecordVisitor): void {
  let start = 0;
  let line = 1;
  while (start < text.length) {
    const chunk = takeChunk(text, start, delimiter);
    const part = text.slice(start, chunk.end);
    for (const record of splitChunk(part, delimiter, chunk.quoted)) {
      const lineAtStart = line;
      line += 1;
      if (chunk.quoted) for (const field of record) line += countLineBreaks(field);
      const fields = delimiter === ' ' ? record.filter((field) => field !== '') : record;
      if (visit(fields, lineAtStart) === false) return;
    }
    start = chunk.end;
  }
}

function splitChunk(part: string, delimiter: Delimiter, quoted: boolean): string[][] {
  return parse(part, {
    delimiter,
    quote: quoted ? '"' : null,
    escape: '"',
    record_delimiter: '\n',
    relax_column_count: true,
    relax_quotes: true,
    skip_empty_lines: false,
    trim: quoted && delimiter !== '\t',
  });
}

/** End of the next chunk, which never lies within a quoted field, and whether it holds quoted fields. */
function takeChunk(text: string, start: number, delimiter: Delimiter): { end: number; quoted: boolean } {
  let end = start;
  let quoted = false;
  let quote = -1;
  for (let lines = 0; lines < LINES_AT_ONCE && end < text.length; lines++) {
    const lineEnd = endOfLine(text, end);
    // Searched for again only once passed: a text without quotes is searched once a chunk, not once a line.
    if (quote < end) quote = text.indexOf('"', end);
    if (quote < 0) quote = text.length;
    const recordEnd = quote >= lineEnd ? lineEnd : endOfQuotedRecord(text, end, delimiter);
    if (recordEnd === null) {
      // A stray quote, such as an inch mark: the line is split as plain text.
      if (quoted) break;
      end = lineEnd;
      continue;
    }
    if (quote < lineEnd && !quoted) {
      // The plain records before it go the fast way, in a chunk of their own.
      if (end > start) break;
      quoted = true;
    }
    end = recordEnd;
  }
  return { end, quoted };
}

function endOfLine(text: string, from: number): number {
  const at = text.indexOf('\n', from);
  return at < 0 ? text.length : at + 1;
}

/** Where the record that starts at `from` ends; `null`: a quoted field in it is never closed. */
function endOfQuotedRecord(text: string, from: number, delimiter: Delimiter): number | null {
  let inside = false;
  let atFieldStart = true;
  let lines = 0;
  for (let position = from; position < text.length; position++) {
    const character = text[position];
    if (character === '\n') {
      if (!inside) return position + 1;
      lines += 1;
      if (lines > LONGEST_QUOTED_LINES) return null;
    }
    if (inside) {
      if (character !== '"') continue;
      if (text[position + 1] === '"') position += 1;
      else if (!endsField(text, position + 1, delimiter)) return null;
      else inside = false;
    } else if (character === '"') {
      if (!atFieldStart) return null;
      inside = true;
      atFieldStart = false;
    } else if (character === delimiter) atFieldStart = true;
    else if (character !== ' ') atFieldStart = false;
  }
  return inside ? null : text.length;
}

function endsField(text: string, from: number, delimiter: Delimiter): boolean {
  let position = from;
  while (delimiter !== ' ' && text[position] === ' ') position += 1;
  return position >= text.length || text[position] === delimiter || text[position] === '\n';
}

function countLineBreaks(field: string): number {
  let breaks = 0;
  for (let at = field.indexOf('\n'); at >= 0; at = field.indexOf('\n', at + 1)) breaks += 1;
  return breaks;
}
