import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import { type Document, isMap, isScalar, isSeq, LineCounter, parseDocument } from 'yaml';

/** A way to a value: names of fields, and numbers of the items of a list from 0. */
export type WrittenPath = readonly (string | number)[];

/** A text as YAML or JSON says it, before anything is made of it. */
export interface Written {
  plain: unknown;
  /** Where the name of a field, or the item of a list, stands; `null`: nowhere. From 1. Of the whole: its begin. */
  placeOf: (path: WrittenPath) => { line: number; column: number } | null;
  /** Line of the file in which the first line of a block of text stands; `null`: it is written in one line. */
  blockLine: (path: WrittenPath) => number | null;
}

/** What a kind of file is like, for the messages of its faults. */
export interface WrittenKind {
  /** What to write into an empty one. */
  ifEmpty: string;
  /** `a combination sheet` */
  called: string;
  /** A line as it should read. */
  exampleLine: string;
  mostCharacters: number;
}

/** Control characters that no editor writes into a text: all but tabs and ends of lines. */
const NO_TEXT = /[^\P{Cc}\t\n\v\f\r\u0085]/u;

/** Reads a text as YAML or JSON (which is read as the YAML it is); faults come back with line and column. */
export function readWritten(text: string, name: string, kind: WrittenKind): Result<Written> {
  if (text.trim() === '')
    return refused(remark('refusal', 'empty-sheet', `${name} is empty. ${kind.ifEmpty}`, { line: 1 }));
  if (text.length > kind.mostCharacters) {
    const message = `${name} has ${text.length} characters; ${kind.called} has at most ${kind.mostCharacters}. Was another file meant?`;
    return refused(remark('refusal', 'sheet-too-long', message, placeAt(text, kind.mostCharacters)));
  }
  const odd = text.search(NO_TEXT);
  if (odd >= 0) {
    const place = placeAt(text, odd);
    const message = `${name} is no text that a person wrote: line ${place.line} has a sign that no editor writes, and ${kind.called} is plain text. Was another file meant?`;
    return refused(remark('refusal', 'sheet-not-text', message, place));
  }
  const counter = new LineCounter();
  const document = parseDocument(text, { lineCounter: counter, prettyErrors: false });
  const faults = document.errors.map((error) => {
    const { line, col } = counter.linePos(error.pos[0]);
    const message = `${name}, line ${line}, column ${col}: ${faultWords(error.code, error.message, kind)}`;
    return remark('refusal', 'sheet-syntax', message, { line, column: col });
  });
  const [first, ...others] = faults;
  if (first) return refused(first, ...others);
  try {
    const plain: unknown = document.toJS({ maxAliasCount: 50 });
    return accepted({ plain, ...placesIn(document, counter) });
  } catch {
    const message = `${name} refers to itself over and over (aliases). Write the values out.`;
    return refused(remark('refusal', 'sheet-syntax', message, placeAt(text, text.search(/\*\w/u))));
  }
}

/** From 1. */
function placeAt(text: string, offset: number): { line: number; column: number } {
  const lines = text.slice(0, Math.max(0, offset)).split('\n');
  return { line: lines.length, column: lines.at(-1)!.length + 1 };
}

function placesIn(document: Document, counter: LineCounter): Pick<Written, 'placeOf' | 'blockLine'> {
  return {
    placeOf: (path) => {
      if (path.length === 0) return { line: 1, column: 1 };
      const offset = nodeAt(document.contents, path)?.offset;
      if (offset === undefined) return null;
      const { line, col } = counter.linePos(offset);
      return { line, column: col };
    },
    blockLine: (path) => {
      const node = nodeAt(document.contents, path)?.value;
      if (!isScalar(node) || (node.type !== 'BLOCK_LITERAL' && node.type !== 'BLOCK_FOLDED')) return null;
      const start = node.range?.[0];
      return start === undefined ? null : counter.linePos(start).line + 1;
    },
  };
}

/** The value at a path, and where what names it begins. */
function nodeAt(node: unknown, [wanted, ...rest]: WrittenPath): { value: unknown; offset: number } | null {
  if (wanted === undefined) return null;
  let value: unknown;
  let offset: number | undefined;
  if (isMap(node)) {
    const pair = node.items.find(({ key }) => isScalar(key) && plainKey(key.value) === plainKey(wanted));
    if (!pair || !isScalar(pair.key)) return null;
    value = pair.value;
    offset = pair.key.range?.[0];
  } else if (isSeq(node) && typeof wanted === 'number') {
    value = node.items[wanted];
    offset = (value as { range?: [number, number, number] | null } | undefined)?.range?.[0];
  }
  if (offset === undefined) return null;
  return rest.length > 0 ? nodeAt(value, rest) : { value, offset };
}

function faultWords(code: string, message: string, { exampleLine }: WrittenKind): string {
  if (code === 'TAB_AS_INDENT') return 'a tab stands at the start of the line. Indent with spaces.';
  if (code === 'DUPLICATE_KEY') return 'the same word stands twice in one section. Keep one of the two.';
  if (code === 'BAD_INDENT')
    return 'the line is indented differently from its neighbours, or a bracket above it is not closed. Fields of one section begin at the same place.';
  return `it cannot be read as YAML or JSON (${message.split('\n')[0]}). A line reads "${exampleLine}".`;
}

/** Names are forgiven capitals, spaces, hyphens and underscores. */
export const plainKey = (key: unknown): string =>
  String(key)
    .toLowerCase()
    .replace(/[\s_-]/g, '');
