import { expect, test } from 'vitest';
import { crossoversOf } from './crossovers.ts';

const speeds = Array.from({ length: 9 }, (_, node) => 3000 + 100 * node);

test('a change of sign that lasts is placed on the line between the nodes', () => {
  expect(crossoversOf(speeds, [-3, -2, -2, -1, 3, 4, 4, 5, 5])).toEqual([3325]);
});

test('a flicker about zero is none', () => {
  expect(crossoversOf(speeds, [1, 1, 1, -1, -1, 1, 1, 1, 1])).toEqual([]);
  expect(crossoversOf(speeds, [1, 1, 1, 1, 1, 1, 1, -1, -1])).toEqual([]);
});

test('holes are passed over, zeros belong to no side', () => {
  const found = crossoversOf(speeds, [-2, -2, -2, Number.NaN, 0, 0, 2, 2, 2]);
  expect(found).toEqual([3400]);
});
