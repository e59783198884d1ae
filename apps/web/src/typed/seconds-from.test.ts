import { expect, test } from 'vitest';
import { secondsFrom } from './seconds-from.ts';

test.each([
  ['0.3', 0.3],
  ['0,3 s', 0.3],
  ['.05', 0.05],
  ['-0.25s', -0.25],
  ['−0.25 s', -0.25],
  ['1', 1],
  ['0', 0],
])('%s is %d', (text, expected) => {
  expect(secondsFrom(text)).toBe(expected);
});

test.each(['', 'a bit', '0.3 ms', '1.2.3', '3,000.5'])('"%s" is no time', (text) => {
  expect(secondsFrom(text)).toBeNaN();
});
