import { describe, expect, test } from 'vitest';
import { unitsOfKind } from '../quantity/index.ts';
import { exampleEntry, FIELDS, fieldNamed } from './fields.ts';
import { readSheet } from './read-sheet.ts';
import { SECTIONS } from './sections.ts';

describe('the table of fields', () => {
  test('each field stands once, in the order of the sections', () => {
    const names = FIELDS.map(({ section, field }) => `${section}.${field}`);
    expect(new Set(names).size).toBe(names.length);
    const order = FIELDS.map(({ section }) => SECTIONS.findIndex(({ id }) => id === section));
    expect(order).toEqual([...order].sort((left, right) => left - right));
    expect(new Set(order).size).toBe(SECTIONS.length);
  });

  test.each(FIELDS.map((field) => [`${field.section}.${field.field}`, field] as const))(
    '%s reads its own example without a refusal or a caution',
    (_, known) => {
      const { section, field, kinds } = known;
      const read = readSheet({
        schemaVersion: 1,
        name: 'example',
        [section]: { [field]: exampleEntry(known) },
      });
      expect(read.remarks.filter(({ level }) => level !== 'note')).toEqual([]);
      expect(
        read.ok &&
          (read.value.sections[section]![field]!.value === null) ===
            (kinds[0] === 'text' || kinds[0] === 'table'),
      ).toBe(true);
    },
  );

  test('what is usual lies inside what is allowed', () => {
    const pairs = FIELDS.flatMap(({ allowed, usual }) => (allowed && usual ? [{ allowed, usual }] : []));
    expect(pairs.length).toBeGreaterThan(10);
    for (const { allowed, usual } of pairs) {
      expect(usual[0]).toBeGreaterThanOrEqual(allowed[0]);
      expect(usual[1]).toBeLessThanOrEqual(allowed[1]);
      expect(usual[0]).toBeLessThan(usual[1]);
    }
  });

  test('every kind that needs a unit has one to offer', () => {
    const kinds = FIELDS.flatMap(({ kinds }) => kinds).filter(
      (kind) => kind !== 'text' && kind !== 'count' && kind !== 'table',
    );
    for (const kind of kinds) expect(unitsOfKind(kind).length).toBeGreaterThan(0);
  });

  test('names are forgiven capitals, spaces and underscores', () => {
    expect(fieldNamed('shortBlock', 'Rod length')).toBe(fieldNamed('shortBlock', 'rodLength'));
    expect(fieldNamed('shortBlock', 'rod_length')?.field).toBe('rodLength');
    expect(fieldNamed('heads', 'rodLength')).toBeNull();
  });
});
