import type { CursorTable } from '@pullbook/views';
import { expect, test } from 'vitest';
import { cursorText } from './cursor-text.ts';

const table: CursorTable = {
  at: [5850, 5900],
  columns: [
    { key: 'A', combination: 0 },
    { key: 'B', combination: 1 },
    { key: 'B − A', combination: null },
  ],
  rows: [
    {
      id: 'power',
      name: 'Power',
      unit: 'hp',
      cells: [
        ['470.1', '478.8'],
        ['', '503.4'],
        ['', '+24.6'],
      ],
    },
    {
      id: 'boost',
      name: 'Boost',
      unit: 'psi',
      cells: [
        ['', ''],
        ['', ''],
        ['', ''],
      ],
    },
  ],
  start: 0,
};

test('every figure is said with its column and unit', () => {
  expect(cursorText(table, 1, 'rpm')).toBe('5900 rpm; Power A 478.8, B 503.4, B − A +24.6 hp');
});

test('a hole is not spoken of', () => {
  expect(cursorText(table, 0, 'rpm')).toBe('5850 rpm; Power A 470.1 hp');
});
