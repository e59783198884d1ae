import type { Origin } from '../quantity/index.ts';
import { accepted, type Remark, type Result, remark } from '../remark/index.ts';
import { fieldNamed, plainName } from './fields.ts';
import type { CombinationSheet, SectionId, SheetValue } from './model.ts';
import { ORIGINS } from './origins.ts';
import { readTable } from './read-table.ts';
import { plainEntry, readFieldValue } from './read-value.ts';
import { remarksOnSheet } from './remarks-on-sheet.ts';
import { SECTIONS } from './sections.ts';
import type { TableShape } from './table-shapes.ts';

/**
 * Reads a combination sheet from its plain form, as it comes out of YAML or JSON:
 *
 * ```yaml
 * schemaVersion: 1
 * name: Straight six, base cam
 * shortBlock:
 *   cylinders: 6
 *   bore: 96 mm
 *   stroke: { value: 88 mm, origin: measured }
 *   rodLength: unknown
 * ```
 *
 * Section and field names are forgiven capitals, spaces, hyphens and underscores. A field that is not known is kept as
 * text with a note. Refused, with every fault at once: no name, an unknown section or origin, a field given twice, and
 * what `readFieldValue` refuses.
 */
export function readSheet(plain: unknown): Result<CombinationSheet> {
  if (!isRecord(plain)) {
    return { ok: false, remarks: [refusal('not-a-sheet', `${WHAT_A_SHEET_IS} This is ${describe(plain)}.`)] };
  }
  const remarks: Remark[] = [...schemaRemarks(plain.schemaVersion)];
  const name =
    typeof plain.name === 'string' || typeof plain.name === 'number' ? String(plain.name).trim() : '';
  if (name === '') {
    remarks.push(
      refusal(
        'name-missing',
        'name: the combination has no name. Add a line such as "name: Straight six, base cam".',
      ),
    );
  }
  const sections: CombinationSheet['sections'] = {};
  for (const [key, content] of Object.entries(plain)) {
    if (key === 'schemaVersion' || key === 'name') continue;
    const section = SECTIONS.find(({ id }) => plainName(id) === plainName(key))?.id;
    if (section === undefined) remarks.push(unknownSection(key));
    else if (sections[section]) remarks.push(givenTwice(key));
    else sections[section] = readSection(section, content, remarks);
  }
  if (remarks.some(({ level }) => level === 'refusal')) return { ok: false, remarks: refusalsFirst(remarks) };
  const sheet: CombinationSheet = { schemaVersion: 1, name, sections };
  return accepted(sheet, [...remarks, ...remarksOnSheet(sheet)]);
}

function readSection(section: SectionId, content: unknown, remarks: Remark[]): Record<string, SheetValue> {
  const values: Record<string, SheetValue> = {};
  if (content === null || content === undefined) return values;
  if (!isRecord(content)) {
    const message = `${section}: holds ${describe(content)} where fields are due. Write one field a line, such as "notes: ${String(content)}".`;
    remarks.push(refusal('section-without-fields', message));
    return values;
  }
  for (const [key, entered] of Object.entries(content)) {
    const known = fieldNamed(section, key);
    const field = known?.field ?? key;
    const place = `${section}.${key}`;
    if (Object.hasOwn(values, field)) {
      remarks.push(givenTwice(place));
      continue;
    }
    const table = known?.table;
    if (table && isRecord(entered) && !Object.hasOwn(entered, 'value')) {
      const { origin = 'not stated', ...rest } = entered;
      if (!isOrigin(origin, place, remarks)) continue;
      const read = readTable({ ...known, table }, rest, origin, place);
      remarks.push(...read.remarks);
      if (read.ok) values[field] = read.value;
      continue;
    }
    const parts = valueAndOrigin(entered, place, remarks);
    if (parts === null) continue;
    if (table && plainEntry(parts.text) !== 'unknown') {
      remarks.push(
        refusal('table-due', `${place}: "${parts.text}" is not a table. ${howToWriteTable(field, table)}`),
      );
      continue;
    }
    if (known === null) {
      values[field] = { text: plainEntry(parts.text), value: null, kind: 'text', origin: parts.origin };
      remarks.push(
        remark(
          'note',
          'field-not-known',
          `${place}: not a field that is known; kept as text and used in no figure.`,
        ),
      );
      continue;
    }
    const read = readFieldValue(known, parts.text, parts.origin, place);
    remarks.push(...read.remarks);
    if (read.ok) values[field] = read.value;
  }
  return values;
}

function valueAndOrigin(
  entered: unknown,
  place: string,
  remarks: Remark[],
): { text: string; origin: Origin } | null {
  const { value, origin = 'not stated', ...rest } = isRecord(entered) ? entered : { value: entered };
  const extra = Object.keys(rest);
  if (extra.length > 0 || (typeof value === 'object' && value !== null)) {
    const message = `${place}: cannot be read. Write "96 mm" or { value: 96 mm, origin: measured }.`;
    remarks.push(refusal('value-not-plain', message));
    return null;
  }
  return isOrigin(origin, place, remarks) ? { text: plainText(value), origin } : null;
}

function isOrigin(origin: unknown, place: string, remarks: Remark[]): origin is Origin {
  if (ORIGINS.includes(origin as Origin)) return true;
  const message = `${place}: origin "${String(origin)}" is not known. Allowed: ${ORIGINS.join(', ')}.`;
  remarks.push(refusal('origin-not-known', message));
  return false;
}

function howToWriteTable(field: string, { details, example }: TableShape): string {
  const needed = details.filter((one) => one.needed).map((one) => `"${one.field}: ${one.example}"`);
  return `Write under "${field}:" the lines ${needed.join(', ')} and "points: |" with "${example.split('\n').slice(0, 2).join('" and "')}" and so on, or "unknown".`;
}

function plainText(value: unknown): string {
  if (value === null || value === undefined) return 'unknown';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return String(value);
}

function schemaRemarks(version: unknown): Remark[] {
  if (version === 1) return [];
  if (version === undefined) {
    return [remark('note', 'schema-version-assumed', 'schemaVersion: not given; taken as 1.')];
  }
  const newer = typeof version === 'number' && version > 1;
  const message = newer
    ? `schemaVersion: ${version} is newer than this program knows (1). Use a newer Pullbook.`
    : `schemaVersion: ${describe(version)} is not a version. Write "schemaVersion: 1".`;
  return [refusal(newer ? 'schema-version-newer' : 'schema-version-wrong', message)];
}

function unknownSection(key: string): Remark {
  const message = `${key}: not a section of a sheet. Sections are ${SECTIONS.map(({ id }) => id).join(', ')}; put remarks under "notes" of one of them.`;
  return refusal('section-not-known', message);
}

const givenTwice = (place: string): Remark =>
  refusal('given-twice', `${place}: given twice. Keep one of the two.`);

const refusal = (code: string, message: string): Remark => remark('refusal', code, message);

function refusalsFirst(remarks: Remark[]): Remark[] {
  const isRefusal = ({ level }: Remark) => level === 'refusal';
  return [...remarks.filter(isRefusal), ...remarks.filter((item) => !isRefusal(item))];
}

const WHAT_A_SHEET_IS =
  'A combination sheet is a list of sections with fields: "shortBlock:" and under it "bore: 96 mm".';

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function describe(value: unknown): string {
  if (value === null || value === undefined) return 'empty';
  if (Array.isArray(value)) return 'a list';
  return typeof value === 'object' ? 'a group of fields' : `"${String(value)}"`;
}
