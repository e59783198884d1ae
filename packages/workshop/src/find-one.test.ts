import { editDistance } from '@pullbook/formats';
import { describe, expect, test } from 'vitest';
import { findOne } from './find-one.ts';

const things = [
  { id: 'aa11-1', name: 'Base cam' },
  { id: 'aa22-2', name: 'Longer cam' },
  { id: 'bb33-3', name: 'Supercharged' },
  { id: 'bb44-4', name: 'supercharged' },
  { id: 'cc55-5', name: 'aa11' },
  { id: 'dd66-6', name: 'a' },
  { id: 'ee77-71', name: 'One' },
  { id: 'ee77-72', name: 'Two' },
];
const code = (given: string) => {
  const found = findOne(things, given, 'pull');
  return found.ok ? found.value.id : found.remarks[0]!.code;
};

describe('findOne', () => {
  test.each([
    ['aa11-1', 'aa11-1'],
    ['AA22', 'aa22-2'],
    ['a', 'dd66-6'],
    ['longer cam', 'aa22-2'],
    // A whole name before the beginning of another's id.
    ['aa11', 'cc55-5'],
    ['ee77', 'ambiguous-id'],
    ['aa2', 'unknown-id'],
    ['Supercharged', 'ambiguous-id'],
    ['zz', 'unknown-id'],
    ['', 'unknown-id'],
  ])('%s is %s', (given, expected) => expect(code(given)).toBe(expected));

  test('names the nearest when nothing fits', () => {
    const found = findOne(things, 'loger cam', 'pull');
    expect(found.ok).toBe(false);
    expect(found.remarks[0]!.message).toMatch(/Nearest: aa22-2 Longer cam/);
  });

  test('says so when there is nothing at all', () => {
    expect(findOne([], 'x', 'trial').remarks[0]!.message).toContain('no trial yet');
  });
});

test('edit distance of the textbook pair is 3', () => {
  // kitten to sitting: the usual worked example (from memory).
  expect(editDistance('kitten', 'sitting')).toBe(3);
  expect(editDistance('', 'abc')).toBe(3);
});
