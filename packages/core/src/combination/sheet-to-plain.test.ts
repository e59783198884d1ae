import fc from 'fast-check';
import { expect, test } from 'vitest';
import { exampleEntry, FIELDS } from './fields.ts';
import { readSheet } from './read-sheet.ts';
import { sheetToPlain } from './sheet-to-plain.ts';

const field = fc.record({
  known: fc.constantFrom(...FIELDS),
  unknown: fc.boolean(),
  origin: fc.constantFrom('not stated', 'measured', 'read off a picture', 'assumed'),
});

test('reading the plain form of a sheet gives the same sheet', () => {
  const property = fc.property(
    fc.array(field, { maxLength: 40 }),
    fc.stringMatching(/^[^\s]{1,12}$/),
    (lines, name) => {
      const plain: Record<string, unknown> = { schemaVersion: 1, name };
      for (const { known, unknown, origin } of lines) {
        const section = (plain[known.section] ?? {}) as Record<string, unknown>;
        section[known.field] =
          known.table === null || unknown
            ? { value: unknown ? 'unknown' : known.example, origin }
            : { origin, ...(exampleEntry(known) as object) };
        plain[known.section] = section;
      }
      const first = readSheet(plain);
      if (!first.ok) throw new Error(first.remarks[0]!.message);
      const again = readSheet(JSON.parse(JSON.stringify(sheetToPlain(first.value))));
      expect(again.ok && again.value).toEqual(first.value);
      expect(JSON.stringify(again)).toBe(JSON.stringify(first));
    },
  );
  fc.assert(property, { seed: 96088, numRuns: 200 });
});
