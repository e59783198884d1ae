import { expect, test } from 'vitest';
import { isSupercharged } from './is-supercharged.ts';
import { testSheet } from './test-sheet.ts';

test.each([
  [{}, false],
  [{ supercharger: {} }, false],
  [{ supercharger: { type: 'none' } }, false],
  [{ supercharger: { type: 'centrifugal' } }, true],
  [{ supercharger: { type: 'unknown' } }, true],
  [{ supercharger: { stepUp: '3.6' } }, true],
])('%j: %s', (sections, expected) => {
  expect(isSupercharged(testSheet(sections))).toBe(expected);
});
