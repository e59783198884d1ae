import { expect, test } from 'vitest';
import { speedFrom } from './speed-from.ts';

test.each([
  ['6500', 6500],
  ['6,500', 6500],
  ['6.500', 6500],
  ['6 500 rpm', 6500],
  ['12,000', 12000],
  ['850', 850],
  ['6500.5', 6500.5],
  ['850,5', 850.5],
])('%s is %d', (text, expected) => {
  expect(speedFrom(text)).toBe(expected);
});

test.each(['', 'six', '-200', '1,2,3', '6500 hp'])('"%s" is no speed', (text) => {
  expect(speedFrom(text)).toBeNaN();
});
