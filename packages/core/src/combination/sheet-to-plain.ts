import type { CombinationSheet, SheetValue } from './model.ts';

/** A sheet in its plain form: JSON and YAML write it as it is. */
export interface PlainSheet {
  schemaVersion: 1;
  name: string;
  [section: string]: unknown;
}

/** The plain form of a sheet, in the order of the sheet: `readSheet(sheetToPlain(sheet))` gives the same sheet. */
export function sheetToPlain(sheet: CombinationSheet): PlainSheet {
  const plain: PlainSheet = { schemaVersion: sheet.schemaVersion, name: sheet.name };
  for (const [section, values] of Object.entries(sheet.sections)) {
    plain[section] = Object.fromEntries(
      Object.entries(values).map(([field, value]) => [field, plainValue(value)]),
    );
  }
  return plain;
}

function plainValue({ text, origin, table }: SheetValue): unknown {
  if (table) {
    const details = Object.entries(table.details).map(([field, detail]) => [field, detail.text]);
    return {
      ...(origin === 'not stated' ? {} : { origin }),
      ...Object.fromEntries(details),
      points: table.points,
    };
  }
  return origin === 'not stated' ? text : { value: text, origin };
}
