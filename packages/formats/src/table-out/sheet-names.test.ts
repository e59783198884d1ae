import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sheetNames } from './sheet-names.ts';

test('signs that a name may not have are blanks; long and like names are told apart', () => {
  expect(sheetNames(['Run: 1/2 [cold]', 'run 1 2 cold', '', "'quoted'", 'History'])).toEqual([
    'Run 1 2 cold',
    'run 1 2 cold (2)',
    'Table',
    'quoted',
    'History (2)',
  ]);
  const long = 'A pull with a name of more than thirty-one signs';
  expect(sheetNames([long, long])).toEqual([
    'A pull with a name of more than',
    'A pull with a name of more (2)',
  ]);
});

test('whatever is wanted, names are legal and told apart by spreadsheets, which forgive capitals', () => {
  const wanted = fc.array(
    fc.oneof(
      fc.string({ unit: fc.constantFrom(...'aA ğ🛠\u0000\ud800[]:*?/\\'), maxLength: 60 }),
      fc.constantFrom('a', 'A', 'history', '🛠'.repeat(20), "''", '\ud800x', 'ß', '[]'),
    ),
    { maxLength: 12 },
  );
  fc.assert(
    fc.property(wanted, (given) => {
      const names = sheetNames(given);
      expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(given.length);
      const isLegal = (name: string) =>
        name.length > 0 &&
        name.length <= 31 &&
        name.toLowerCase() !== 'history' &&
        !/[[\]:*?/\\\p{Cc}\p{Cs}]|^'|'$/u.test(name);
      expect(names.filter((name) => !isLegal(name))).toEqual([]);
    }),
    { numRuns: 40 },
  );
});
