import type { TextLayout } from '../model.ts';
import type { CellText } from './cell-text.ts';
import { type RecordPlace, recordAt } from './record-end.ts';

type Delimiter = TextLayout['delimiter'];

/** The start of a file, or all of it: bytes in UTF-8 or windows-1252, without a byte order mark. */
export interface TextBytes {
  bytes: Uint8Array;
  cells: CellText;
}

/** Sees one record; `false` stops the walk. `line` is the 1-based line on which the record starts. */
export type RecordVisitor = (fields: string[], line: number) => boolean | undefined;

/**
 * Walks the records of a delimited text. A quoted field may hold delimiters and line breaks. With a space as the
 * delimiter, runs of spaces count as one.
 */
export function eachRecord(text: TextBytes, delimiter: Delimiter, visit: RecordVisitor): void {
  const { bytes } = text;
  const code = delimiter.charCodeAt(0);
  let line = 1;
  for (let at = 0; at < bytes.length; ) {
    const record = recordAt(bytes, at, bytes.length, code, true) as RecordPlace;
    if (visit(fieldsOf(text, at, record, delimiter), line) === false) return;
    line += record.lines;
    at = record.next;
  }
}

/** The fields of one record that starts at `from`. */
export function fieldsOf(
  { bytes, cells }: TextBytes,
  from: number,
  { end, quoted }: RecordPlace,
  delimiter: Delimiter,
): string[] {
  const text = cells.of(bytes, from, end);
  const fields = quoted
    ? quotedFields(text.includes('\r') ? text.replace(/\r\n?/g, '\n') : text, delimiter)
    : text.split(delimiter);
  return delimiter === ' ' ? fields.filter((field) => field !== '') : fields;
}

/** Fields of a record whose quotes are well formed: `""` in a quoted field is one quote, blanks around fields go. */
function quotedFields(text: string, delimiter: Delimiter): string[] {
  const fields: string[] = [];
  for (let at = 0; ; ) {
    while (delimiter !== ' ' && text[at] === ' ') at += 1;
    let end: number;
    if (text[at] === '"') {
      let close = text.indexOf('"', at + 1);
      while (text[close + 1] === '"') close = text.indexOf('"', close + 2);
      fields.push(text.slice(at + 1, close).replaceAll('""', '"'));
      end = text.indexOf(delimiter, close + 1);
    } else {
      end = text.indexOf(delimiter, at);
      fields.push(text.slice(at, end < 0 ? text.length : end).trim());
    }
    if (end < 0) return fields;
    at = end + 1;
  }
}
