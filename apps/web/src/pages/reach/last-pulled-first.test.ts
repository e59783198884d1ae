import { expect, test } from 'vitest';
import { lastPulledFirst } from './last-pulled-first.ts';

test('what was pulled last comes first, what was never pulled last', () => {
  const rows = [
    { id: 'never', pulls: 0 },
    { id: 'long ago', pulls: 2 },
    { id: 'before', pulls: 1 },
    { id: 'last', pulls: 3 },
  ];
  const newest = [
    { combinationId: 'last' },
    { combinationId: null },
    { combinationId: 'before' },
    { combinationId: 'last' },
  ];
  expect(lastPulledFirst(rows, newest).map(({ id }) => id)).toEqual(['last', 'before', 'long ago', 'never']);
});
