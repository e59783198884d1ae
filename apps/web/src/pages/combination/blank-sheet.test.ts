import { readCombinationText } from '@pullbook/formats';
import { expect, test } from 'vitest';
import { blankSheet, renamedSheet } from './blank-sheet.ts';

test('a blank sheet can be read, whatever stands in its name', () => {
  for (const name of ['Base cam', 'Cam: 12° longer', '"quoted" # not a comment', 'true']) {
    const sheet = readCombinationText(blankSheet(name));
    expect(sheet.ok && sheet.value.name).toBe(name);
  }
});

test('only the name changes when a sheet is renamed', () => {
  const before = readCombinationText(blankSheet('Before'));
  const after = readCombinationText(renamedSheet(blankSheet('Before'), 'After $& more'));
  expect(before.ok && after.ok && { ...after.value, name: 'Before' }).toEqual(before.ok && before.value);
  expect(after.ok && after.value.name).toBe('After $& more');
});
