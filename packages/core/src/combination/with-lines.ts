import { accepted, type Result, refused, remark } from '../remark/index.ts';
import { fieldNamed, plainName } from './fields.ts';
import { ORIGINS } from './origins.ts';
import { SECTIONS } from './sections.ts';
import type { PlainSheet } from './sheet-to-plain.ts';

/** One line to be changed: `cam.profile`, or `heads.flowIntake.testPressure` inside a table. */
export interface LineToChange {
  place: string;
  /** `null`: the line is taken off the sheet. An origin may stand behind it in brackets: `284 deg (data sheet)`. */
  entered: string | null;
}

/**
 * The same sheet but for some lines, in plain form. A changed line has the origin that is given with it and none else, for
 * the origin of the old value says nothing of the new one. Refused: a section no sheet has, a line to be taken off that is
 * not there, a line of a table that has no table.
 */
export function withLines(plain: PlainSheet, lines: readonly LineToChange[]): Result<PlainSheet> {
  let changed = plain;
  for (const line of lines) {
    const next = withLine(changed, line);
    if (!next.ok) return next;
    changed = next.value;
  }
  return accepted(changed);
}

function withLine(plain: PlainSheet, { place, entered }: LineToChange): Result<PlainSheet> {
  const [sectionName = '', fieldName = '', ...detailNames] = place.split('.').map((part) => part.trim());
  const section = SECTIONS.find(({ id }) => plainName(id) === plainName(sectionName))?.id;
  if (section === undefined || fieldName === '') {
    const message = `${place}: not a line of a sheet. Write the section and the field, such as cam.profile; sections are ${SECTIONS.map(({ id }) => id).join(', ')}.`;
    return refused(remark('refusal', 'line-not-known', message));
  }
  const known = fieldNamed(section, fieldName);
  const isOfTable = detailNames.length > 0 && known?.table != null;
  const field = known?.field ?? [fieldName, ...detailNames].join('.');
  const before = plain[section];
  const fields = isGroup(before) ? before : {};
  if (isOfTable) {
    const there = fields[field];
    // `{ value: unknown, origin }` is no table yet.
    const table = isGroup(there) && !Object.hasOwn(there, 'value') ? there : {};
    const changed = changedKey(table, detailNames.join('.'), entered, place);
    return changed.ok ? accepted({ ...plain, [section]: { ...fields, [field]: changed.value } }) : changed;
  }
  const changed = changedKey(fields, field, entered === null ? null : plainEntryOf(entered), place);
  return changed.ok ? accepted({ ...plain, [section]: changed.value }) : changed;
}

function changedKey(
  group: Record<string, unknown>,
  key: string,
  value: unknown,
  place: string,
): Result<Record<string, unknown>> {
  if (value !== null) return accepted({ ...group, [key]: value });
  if (!Object.hasOwn(group, key)) {
    const message = `${place}: cannot be taken off, for it is not on the sheet. On it are ${Object.keys(group).join(', ') || 'no lines there'}.`;
    return refused(remark('refusal', 'line-not-there', message));
  }
  const { [key]: _, ...rest } = group;
  return accepted(rest);
}

/** `284 deg (data sheet)` is a value with its origin; other brackets belong to the text. */
function plainEntryOf(entered: string): unknown {
  const [, value, origin] = /^(.*\S)\s*\(([^()]*)\)\s*$/su.exec(entered) ?? [];
  const named = ORIGINS.find((one) => one === origin?.trim().toLowerCase());
  return named === undefined || value === undefined ? entered : { value, origin: named };
}

const isGroup = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
