import { type CombinationSheet, readSheet, sheetToPlain } from '@pullbook/core/combination';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import { type Document, isMap, isScalar, LineCounter, parseDocument, stringify } from 'yaml';

/** A sheet has some hundred lines; more is another file given by mistake. */
const LONGEST_SHEET = 1_000_000;

/**
 * Reads a combination sheet written as YAML or JSON (which is read as the YAML it is). Faults of the writing come back
 * with line and column; faults of the content as `readSheet` tells them, with the line they stand on.
 *
 * @example readCombinationText('schemaVersion: 1\nname: Straight six\nshortBlock:\n  bore: 96 mm\n')
 */
export function readCombinationText(text: string, name = 'The sheet'): Result<CombinationSheet> {
  const written = readWritten(text, name);
  if (!written.ok) return written;
  const { plain, lineOf } = written.value;
  const read = readSheet(plain);
  return { ...read, remarks: read.remarks.map(lineOf) };
}

/** What YAML or JSON says before it is read as a sheet; faults of the writing come back with line and column. */
export function readPlainText(text: string, name = 'The sheet'): Result<unknown> {
  const written = readWritten(text, name);
  return written.ok ? accepted(written.value.plain) : written;
}

interface Written {
  plain: unknown;
  /** The remark with the line of the place it begins with. */
  lineOf: (item: Remark) => Remark;
}

function readWritten(text: string, name: string): Result<Written> {
  if (text.trim() === '') {
    return refused(
      remark(
        'refusal',
        'empty-sheet',
        `${name} is empty. Write at least a name and a section, such as shortBlock with the bore.`,
      ),
    );
  }
  if (text.length > LONGEST_SHEET) {
    const message = `${name} has ${text.length} characters; a combination sheet has at most ${LONGEST_SHEET}. Was another file meant?`;
    return refused(remark('refusal', 'sheet-too-long', message));
  }
  const counter = new LineCounter();
  const document = parseDocument(text, { lineCounter: counter, prettyErrors: false });
  const faults = document.errors.map((error) => {
    const { line, col } = counter.linePos(error.pos[0]);
    const message = `${name}, line ${line}, column ${col}: ${faultWords(error.code, error.message)}`;
    return remark('refusal', 'sheet-syntax', message, { line, column: col });
  });
  const [first, ...others] = faults;
  if (first) return refused(first, ...others);
  try {
    const plain: unknown = document.toJS({ maxAliasCount: 50 });
    return accepted({ plain, lineOf: (item: Remark) => withLine(item, document, counter) });
  } catch {
    return refused(
      remark(
        'refusal',
        'sheet-syntax',
        `${name} refers to itself over and over (aliases). Write the values out.`,
      ),
    );
  }
}

/** A sheet as YAML, in its own order; `readCombinationText` reads the same sheet back. */
export function combinationToYaml(sheet: CombinationSheet): string {
  return plainToYaml(sheetToPlain(sheet));
}

/** A plain form as YAML, be it a sheet that can be read or one at which somebody still works. */
export function plainToYaml(plain: unknown): string {
  return stringify(plain, { lineWidth: 0 });
}

/** A sheet as JSON, in its own order. */
export function combinationToJson(sheet: CombinationSheet): string {
  return `${JSON.stringify(sheetToPlain(sheet), null, 2)}\n`;
}

function faultWords(code: string, message: string): string {
  if (code === 'TAB_AS_INDENT') return 'a tab stands at the start of the line. Indent with spaces.';
  if (code === 'DUPLICATE_KEY') return 'the same word stands twice in one section. Keep one of the two.';
  if (code === 'BAD_INDENT')
    return 'the line is indented differently from its neighbours, or a bracket above it is not closed. Fields of one section begin at the same place.';
  return `it cannot be read as YAML or JSON (${message.split('\n')[0]}). A line reads "bore: 96 mm".`;
}

/** `readSheet` begins each message with the place, `section.field:`; the line is where that, or what holds it, stands. */
function withLine(item: Remark, document: Document, counter: LineCounter): Remark {
  const place = /^([^.:\s]+)(?:\.([^:]+))?:/.exec(item.message);
  const [, section, field] = place ?? [];
  if (item.line !== undefined || section === undefined) return item;
  const offset =
    field === undefined
      ? offsetOf(document.contents, [section])
      : (offsetOf(document.contents, [section, field]) ??
        offsetOf(document.contents, [section, ...field.split('.')]) ??
        offsetOf(document.contents, [section, field.split('.')[0]!]));
  if (offset === null) return item;
  const { line, col } = counter.linePos(offset);
  return { ...item, line, column: col };
}

function offsetOf(node: unknown, path: readonly string[]): number | null {
  const [wanted, ...rest] = path;
  if (!isMap(node) || wanted === undefined) return null;
  const pair = node.items.find(({ key }) => isScalar(key) && plainKey(key.value) === plainKey(wanted));
  if (!pair || !isScalar(pair.key)) return null;
  if (rest.length > 0) return offsetOf(pair.value, rest);
  return pair.key.range?.[0] ?? null;
}

const plainKey = (key: unknown): string =>
  String(key)
    .toLowerCase()
    .replace(/[\s_-]/g, '');
