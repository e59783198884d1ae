import { type CombinationSheet, readSheet, sheetToPlain } from '@pullbook/core/combination';
import { accepted, type Remark, type Result } from '@pullbook/core/remark';
import { stringify } from 'yaml';
import { readWritten, type Written, type WrittenKind } from '../yaml/read-written.ts';

/** A sheet has some hundred lines; more is another file given by mistake. */
const SHEET: WrittenKind = {
  called: 'a combination sheet',
  ifEmpty: 'Write at least a name and a section, such as shortBlock with the bore.',
  exampleLine: 'bore: 96 mm',
  mostCharacters: 1_000_000,
};

/**
 * Reads a combination sheet written as YAML or JSON (which is read as the YAML it is). Faults of the writing come back
 * with line and column; faults of the content as `readSheet` tells them, with the line they stand on.
 *
 * @example readCombinationText('schemaVersion: 1\nname: Straight six\nshortBlock:\n  bore: 96 mm\n')
 */
export function readCombinationText(text: string, name = 'The sheet'): Result<CombinationSheet> {
  const written = readWritten(text, name, SHEET);
  if (!written.ok) return written;
  const read = readSheet(written.value.plain);
  return { ...read, remarks: read.remarks.map((one) => withSheetLine(one, written.value)) };
}

/** What YAML or JSON says before it is read as a sheet; faults of the writing come back with line and column. */
export function readPlainText(text: string, name = 'The sheet'): Result<unknown> {
  const written = readWritten(text, name, SHEET);
  return written.ok ? accepted(written.value.plain) : written;
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

/**
 * The remark of a sheet with its line. `readSheet` begins each message with the place, `section.field:`; the line is where
 * that, or what holds it, stands. `below`: where in the file the sheet stands.
 */
export function withSheetLine(item: Remark, { placeOf }: Written, below: readonly string[] = []): Remark {
  const place = /^([^.:]+)(?:\.([^:]+))?:/.exec(item.message);
  const [, section, field] = place ?? [];
  if (item.line !== undefined) return item;
  const found =
    section === undefined
      ? null
      : field === undefined
        ? placeOf([...below, section])
        : (placeOf([...below, section, field]) ??
          placeOf([...below, section, ...field.split('.')]) ??
          placeOf([...below, section, field.split('.')[0]!]));
  // What is refused of the whole, or by a name that nobody finds again, stands where the sheet begins.
  const at = found ?? (item.level === 'refusal' ? placeOf(below) : null);
  return at === null ? item : { ...item, ...at };
}
