import {
  KIND_NAME,
  type QuantityKind,
  readNumber,
  toInside,
  type Unit,
  unitFor,
  unitsFor,
  unitsOfKind,
} from '@pullbook/core/quantity';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import type { TableRow } from './split-cells.ts';

/** A column that a table may have. */
export interface ColumnShape {
  field: string;
  /** Words of a heading that mean it, in small letters; of all that stand in a heading the longest wins. */
  words: readonly string[];
  /** Kinds it may be given in, the usual one first. */
  kinds: readonly [QuantityKind, ...QuantityKind[]];
  /** As a heading would say it: `flow [kg/s]`. */
  example: string;
  isNeeded: boolean;
  /** A row may lack it. */
  mayBeEmpty?: boolean;
  /** Inside unit of the first kind; outside is a slip of the unit and refused. Wide on purpose. Common practice, no source. */
  allowed: readonly [low: number, high: number];
}

/** A column as it was read. */
export interface ReadColumn {
  kind: QuantityKind;
  unit: Unit;
  /** Inside unit of `kind`; `null`: the row lacks it. */
  values: (number | null)[];
}

export interface HeadedTable {
  columns: Map<string, ReadColumn>;
  /** Line of each row in its file. */
  lines: (number | null)[];
}

/** More rows than any map or pull has; more is another file given by mistake. */
const MOST_ROWS = 20_000;

/**
 * Reads a table whose heading names each column with its unit. Headings that mean no column are left out with a note; a
 * column twice, one that is needed and missing, a unit of another kind, and a cell that is no number or cannot be are
 * refused, naming the line. `what` is the table in messages: `The map`.
 */
export function readHeadedTable(
  [heading, ...rows]: readonly TableRow[],
  shapes: readonly ColumnShape[],
  what: string,
): Result<HeadedTable> {
  const example = shapes
    .filter(({ isNeeded }) => isNeeded)
    .map((shape) => shape.example)
    .join(', ');
  if (heading === undefined || rows.length === 0)
    return refused(
      fault(
        'table-empty',
        `${what} has no rows. Write a heading such as "${example}" and one row a line under it.`,
        heading?.line,
      ),
    );
  if (rows.length > MOST_ROWS)
    return refused(
      fault(
        'table-too-long',
        `${what} has ${rows.length} rows; at most ${MOST_ROWS} are read. Was another file meant?`,
        heading.line,
      ),
    );
  const found = readHeading(heading, shapes, what);
  if (!found.ok) return found;
  for (const { cells, line } of rows) {
    if (cells.length === heading.cells.length) continue;
    const message = `${what}: ${cells.length} ${cells.length === 1 ? 'value' : 'values'} where the heading names ${heading.cells.length} columns. Write one for each.`;
    return refused(fault('table-row-length', message, line));
  }
  const columns = new Map<string, ReadColumn>();
  for (const { shape, kind, unit, cell } of found.value) {
    const values = readValues(rows, cell, { shape, kind, unit }, what);
    if (!values.ok) return values;
    columns.set(shape.field, { kind, unit, values: values.value });
  }
  return accepted({ columns, lines: rows.map(({ line }) => line) }, found.remarks);
}

interface FoundColumn {
  shape: ColumnShape;
  kind: QuantityKind;
  unit: Unit;
  cell: number;
}

function readHeading(
  { cells, line }: TableRow,
  shapes: readonly ColumnShape[],
  what: string,
): Result<FoundColumn[]> {
  const found: FoundColumn[] = [];
  const left: string[] = [];
  for (const [cell, heading] of cells.entries()) {
    const meant = columnMeant(heading, shapes);
    if (meant === null) {
      if (heading.trim() !== '') left.push(heading.trim());
      continue;
    }
    const { shape, unitText } = meant;
    if (found.some((one) => one.shape === shape))
      return refused(
        fault('table-column-twice', `${what}: two columns are ${shape.words[0]}. Keep one of the two.`, line),
      );
    const unit = unitOf(shape, unitText);
    if (unit === null)
      return refused(fault('table-unit', `${what}: ${unitTrouble(shape, heading.trim(), unitText)}`, line));
    found.push({ shape, kind: unit.kind, unit, cell });
  }
  const missing = shapes.filter((shape) => shape.isNeeded && !found.some((one) => one.shape === shape));
  if (missing.length > 0) {
    const words = missing.map(({ words: [word] }) => word).join(' and ');
    const message = `${what}: the heading "${cells.join(', ')}" names no ${words}. Write it with its unit, such as "${missing.map((shape) => shape.example).join('", "')}".`;
    return refused(fault('table-column-missing', message, line));
  }
  if (left.length === 0) return accepted(found);
  const names = left.map((name) => `"${name}"`).join(', ');
  const message = `${what}: ${names} ${left.length === 1 ? 'is' : 'are'} used in no figure and left out.`;
  return accepted(found, [remark('note', 'table-column-not-used', message, atLine(line))]);
}

/** The column that a heading means, and what stands there as its unit; `null`: none. */
export function columnMeant(
  heading: string,
  shapes: readonly ColumnShape[],
): { shape: ColumnShape; unitText: string } | null {
  const lower = heading.toLowerCase();
  const all = shapes.flatMap((shape) => shape.words.map((word) => ({ shape, word })));
  const fitting = all.filter(({ word }) => isWordIn(lower, word));
  const [best] = fitting.sort((one, other) => other.word.length - one.word.length);
  if (best === undefined) return unitAlone(heading, shapes);
  const bracket = /[[(]\s*([^\][]*?)\s*[\])]?\s*$/.exec(heading.slice(lower.indexOf(best.word)));
  const after = heading.slice(lower.indexOf(best.word) + best.word.length);
  const unitText = bracket
    ? bracket[1]!
    : after
        .replace(/^[\s:,/_-]+/, '')
        .replace(/^in\s+/, '')
        .trim();
  return { shape: best.shape, unitText };
}

/** A heading that is only a unit, `rpm`, means the column that can be in it, a needed one first; of bare ratios nothing is known. */
function unitAlone(
  heading: string,
  shapes: readonly ColumnShape[],
): { shape: ColumnShape; unitText: string } | null {
  const unitText = heading.trim().replace(/^[[(]|[\])]$/g, '');
  const fitting = shapes.filter(({ kinds }) =>
    kinds.some((kind) => kind !== 'ratio' && unitText !== '' && unitFor(unitText, kind) !== null),
  );
  const needed = fitting.filter(({ isNeeded }) => isNeeded);
  const [only, ...others] = needed.length > 0 ? needed : fitting;
  return only !== undefined && others.length === 0 ? { shape: only, unitText } : null;
}

/** As a word of its own: `flow` stands in `flow [kg/s]` and not in `overflow`. */
function isWordIn(text: string, word: string): boolean {
  const at = text.indexOf(word);
  return at >= 0 && !/\p{L}/u.test(text[at - 1] ?? ' ') && !/\p{L}/u.test(text[at + word.length] ?? ' ');
}

function unitOf({ kinds }: ColumnShape, text: string): Unit | null {
  const plain = /^(fraction|share|of 1)$/i.test(text) ? '' : text;
  for (const kind of kinds) {
    const unit = unitFor(plain, kind);
    if (unit) return unit;
  }
  return null;
}

function unitTrouble({ kinds, example }: ColumnShape, heading: string, text: string): string {
  const names = kinds.flatMap((kind) =>
    unitsOfKind(kind).map(({ name }) => (name === '' ? 'no unit' : name)),
  );
  const accepting = `Accepted: ${names.join(', ')}. Write for example "${example}".`;
  if (text === '')
    return `the heading "${heading}" has no unit, so its numbers could mean several things. ${accepting}`;
  const [other] = unitsFor(text);
  const trouble = other
    ? `"${text}" is a unit for ${KIND_NAME[other.kind]}, and ${KIND_NAME[kinds[0]]} is due`
    : `"${text}" is not a known unit for ${KIND_NAME[kinds[0]]}`;
  return `in the heading "${heading}" ${trouble}. ${accepting}`;
}

function readValues(
  rows: readonly TableRow[],
  cell: number,
  { shape, kind, unit }: Omit<FoundColumn, 'cell'>,
  what: string,
): Result<(number | null)[]> {
  const texts = rows.map(({ cells }) => cells[cell]!.trim());
  const hasPoints = texts.some((text) => text.includes('.'));
  // A comma between the cells is no mark inside one; where commas stand and no points, they are decimal marks.
  const mark = !hasPoints && texts.some((text) => text.includes(',')) ? ',' : 'either';
  const values: (number | null)[] = [];
  for (const [index, text] of texts.entries()) {
    const { line } = rows[index]!;
    if (text === '' || /^(unknown|nan|null|-|–)$/i.test(text)) {
      if (!shape.mayBeEmpty)
        return refused(
          fault(
            'table-cell-empty',
            `${what}: ${shape.words[0]} is missing. Write it, or leave the whole row out.`,
            line,
          ),
        );
      values.push(null);
      continue;
    }
    const reading = readNumber(text, mark);
    if (reading.state !== 'value') {
      const why =
        reading.state === 'ambiguous'
          ? `could mean ${reading.withComma} or ${reading.grouped}`
          : 'is not a number';
      return refused(
        fault(
          'table-cell',
          `${what}: ${shape.words[0]} "${text}" ${why}. Write a plain number with a decimal point, such as 1250.5.`,
          line,
        ),
      );
    }
    const value = toInside(reading.value, unit);
    const isOdd = kind === shape.kinds[0] && (value < shape.allowed[0] || value > shape.allowed[1]);
    if (isOdd || !Number.isFinite(value))
      return refused(
        fault(
          'table-cell-impossible',
          `${what}: ${shape.words[0]} of ${text}${unit.name === '' ? '' : ` ${unit.name}`} cannot be. Check the number, and the unit in the heading.`,
          line,
        ),
      );
    values.push(value);
  }
  return accepted(values);
}

/** Where a remark on a table belongs: the line is kept beside its words, which do not repeat it. */
export const atLine = (line: number | null | undefined): { line?: number } => (line == null ? {} : { line });

function fault(code: string, message: string, line: number | null | undefined): Remark {
  return remark('refusal', code, message, atLine(line));
}
