import type { SheetWords } from '../../api/edge.ts';

/** One line of a sheet as a person edits it. */
export interface SheetLine {
  field: string;
  /** What is entered; of a table its points. */
  text: string;
  origin: string;
  /** Lines beside the points, by field; `null`: not a table. */
  details: Record<string, string> | null;
}

export interface SheetBlock {
  section: string;
  lines: SheetLine[];
}

/** A sheet line by line. `linesFromPlain` and `plainFromLines` lead to its plain form and back. */
export interface SheetLines {
  name: string;
  blocks: SheetBlock[];
}

export const NOT_STATED = 'not stated';
export const UNKNOWN = 'unknown';

/** Whether a line says in words that its value is not known. An empty one is kept as that too. */
export const saysUnknown = (line: SheetLine): boolean => /^\s*(unknown|not known|\?)\s*$/i.test(line.text);

const isEmpty = ({ text, details }: SheetLine): boolean =>
  text.trim() === '' && Object.values(details ?? {}).every((detail) => detail.trim() === '');

/** A plain form that the server called fit for it, line by line in its own order. */
export function linesFromPlain(plain: Record<string, unknown>, words: SheetWords): SheetLines {
  const blocks = Object.entries(plain)
    .filter(([key]) => key !== 'schemaVersion' && key !== 'name')
    .map(([section, content]) => ({
      section,
      lines: Object.entries((content ?? {}) as Record<string, unknown>).map(([field, value]) =>
        lineFrom(field, value, isTable(words, section, field)),
      ),
    }));
  return { name: String(plain.name ?? ''), blocks };
}

function lineFrom(field: string, value: unknown, table: boolean): SheetLine {
  if (typeof value !== 'object' || value === null)
    return { field, text: textOf(value), origin: NOT_STATED, details: table ? {} : null };
  const { value: alone, origin = NOT_STATED, points, ...details } = value as Record<string, unknown>;
  const isPoints = table && alone === undefined;
  return {
    field,
    text: textOf(isPoints ? points : alone),
    origin: String(origin),
    details: table
      ? Object.fromEntries(Object.entries(details).map(([name, detail]) => [name, textOf(detail)]))
      : null,
  };
}

const textOf = (value: unknown): string =>
  value === null || value === undefined
    ? UNKNOWN
    : typeof value === 'boolean'
      ? value
        ? 'yes'
        : 'no'
      : String(value);

/** The plain form, as the published schema has it. Lines beside points that were left empty are left out. */
export function plainFromLines({ name, blocks }: SheetLines): Record<string, unknown> {
  const sections = blocks.map(({ section, lines }) => [
    section,
    Object.fromEntries(lines.map((line) => [line.field, plainLine(line)])),
  ]);
  return { schemaVersion: 1, name, ...Object.fromEntries(sections) };
}

function plainLine(line: SheetLine): unknown {
  const stated = line.origin === NOT_STATED ? {} : { origin: line.origin };
  const unknown = saysUnknown(line) || isEmpty(line);
  if (line.details !== null && !unknown) {
    const details = Object.entries(line.details).filter(([, text]) => text.trim() !== '');
    return { ...stated, ...Object.fromEntries(details), points: line.text };
  }
  const text = unknown ? UNKNOWN : line.text;
  return line.origin === NOT_STATED ? text : { value: text, ...stated };
}

/** The sheet with one block changed. */
export function withBlock(sheet: SheetLines, section: string, lines: SheetLine[]): SheetLines {
  return {
    ...sheet,
    blocks: sheet.blocks.map((block) => (block.section === section ? { section, lines } : block)),
  };
}

/**
 * A line as it was edited on a sheet of other hardware. The origin of the old value says nothing of the new one, so it goes
 * with the old value and comes back with it.
 */
export function withOriginOfItsValue(
  edited: SheetLine,
  before: SheetLine,
  first: SheetLine | undefined,
): SheetLine {
  if (first === undefined || edited.text === before.text) return edited;
  if (edited.text === first.text) return { ...edited, origin: first.origin };
  return before.text === first.text && before.origin === first.origin
    ? { ...edited, origin: NOT_STATED }
    : edited;
}

/** A new line of a section, empty and to be filled in. */
export function newLine(words: SheetWords, section: string, field: string): SheetLine {
  return { field, text: '', origin: NOT_STATED, details: isTable(words, section, field) ? {} : null };
}

/** Fields of a section that are not on the sheet yet, in the order a sheet is best read. */
export function fieldsLeft(words: SheetWords, block: SheetBlock): SheetWords['sections'][number]['fields'] {
  const known = words.sections.find(({ id }) => id === block.section)?.fields ?? [];
  return known.filter(({ field }) => !block.lines.some((line) => line.field === field));
}

/** The field that comes next on a sheet after this one and is not on it yet. */
export function nextField(words: SheetWords, block: SheetBlock, after: string): string | null {
  const known = words.sections.find(({ id }) => id === block.section)?.fields ?? [];
  const left = fieldsLeft(words, block);
  const place = known.findIndex(({ field }) => field === after);
  return (
    (left.find(({ field }) => known.findIndex((one) => one.field === field) > place) ?? left[0])?.field ??
    null
  );
}

const isTable = (words: SheetWords, section: string, field: string): boolean =>
  fieldWords(words, section, field)?.details != null;

/** What is known of a field; `undefined`: a line of its own. */
export function fieldWords(words: SheetWords, section: string, field: string) {
  return words.sections.find(({ id }) => id === section)?.fields.find((one) => one.field === field);
}
