import { CORRECTIONS } from '@pullbook/core/air';
import { expect, test } from 'vitest';
import { isCorrection, STANDARDS } from './standards.ts';

test('the standards to choose from are those that can be computed, under their own names', () => {
  expect(STANDARDS.map((one) => one.value).toSorted()).toEqual(Object.keys(CORRECTIONS).toSorted());
  for (const { value, text } of STANDARDS) {
    if (value !== 'observed') expect(text).toBe(CORRECTIONS[value].name);
  }
});

test('nothing else passes for a standard', () => {
  for (const other of ['SAE J1349', '', null, undefined, 1349, 'toString'])
    expect(isCorrection(other)).toBe(false);
});
