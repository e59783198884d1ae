import { expect, test } from 'vitest';
import { kindOfRows } from './kind-of-rows.ts';

const rows = (count: number, at: (row: number) => number) =>
  Float64Array.from({ length: count }, (_, row) => at(row));

test('a logger is samples, with and without time', () => {
  expect(
    kindOfRows(
      rows(600, (row) => 2500 + 6 * row),
      null,
    ),
  ).toBe('samples');
  expect(
    kindOfRows(
      rows(70, (row) => 2511 + 61 * row),
      rows(70, (row) => 0.2 * row),
    ),
  ).toBe('samples');
});

test('a printed table and a step test are points', () => {
  expect(
    kindOfRows(
      rows(41, (row) => 2500 + 100 * row),
      null,
    ),
  ).toBe('points');
  expect(
    kindOfRows(
      rows(81, (row) => 2500 + 50 * row),
      null,
    ),
  ).toBe('points');
  expect(
    kindOfRows(
      rows(41, (row) => 2500 + 100 * row),
      rows(41, (row) => row / 3),
    ),
  ).toBe('points');
  expect(
    kindOfRows(
      rows(15, (row) => 2507 + 251 * row),
      rows(15, (row) => 12 * row),
    ),
  ).toBe('points');
});
