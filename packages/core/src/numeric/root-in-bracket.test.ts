import { expect, test } from 'vitest';
import { rootInBracket } from './root-in-bracket.ts';

test('finds the root to the last bits', () => {
  expect(rootInBracket((x) => x * x - 2, { low: 0, high: 2 })).toBeCloseTo(Math.SQRT2, 15);
});

test('stands a jump through zero', () => {
  expect(rootInBracket((x) => (x < 0.3 ? -1 : 1), { low: -1, high: 1 })).toBeCloseTo(0.3, 15);
});

test('no change of sign, no root', () => {
  expect(rootInBracket((x) => x * x + 1, { low: 0, high: 2 })).toBeNaN();
  expect(rootInBracket(() => Number.NaN, { low: 0, high: 2 })).toBeNaN();
});
