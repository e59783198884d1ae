import { describe, expect, test } from 'vitest';
import { mutateFile } from './mutate-files/mutate-file.ts';

describe('spoiled files are read or refused with a reason and a place', () => {
  test.each([0, 50, 100, 150, 200, 250])('files %i and on', async (from) => {
    const found = [];
    for (let number = from; number < from + 50; number++)
      found.push({ number, ...(await mutateFile(2026, number)) });
    expect(found.filter(({ outcome }) => outcome.faults.length > 0)).toEqual([]);
    // Neither everything nor nothing gets through, or the files would not be spoiled as they should be.
    expect(found.some(({ outcome }) => outcome.refusedFor === null)).toBe(true);
    expect(found.some(({ outcome }) => outcome.refusedFor !== null)).toBe(true);
  });
});
