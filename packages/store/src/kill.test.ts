import { expect, test } from 'vitest';
import { killRounds } from './testing/kill-rounds.ts';
import { temporaryFolder } from './testing/temporary-folder.ts';

/** Starting a program takes most of the time, and more on a busy machine. */
const TIME_LIMIT_MS = 240_000;

test(
  'killed at any moment of an import, the book opens with every accepted pull whole and no half one',
  async () => {
    const rounds = await killRounds({ folder: temporaryFolder(), rounds: 12, seed: 'unit' });
    expect(rounds.flatMap(({ faults }) => faults)).toEqual([]);
    expect(rounds).toHaveLength(12);
    // Otherwise nothing was put to the test.
    expect(rounds.reduce((sum, { accepted }) => sum + accepted, 0)).toBeGreaterThan(12);
  },
  TIME_LIMIT_MS,
);

test(
  'the same with two programs importing into one book',
  async () => {
    const rounds = await killRounds({ folder: temporaryFolder(), rounds: 3, seed: 'two', writers: 2 });
    expect(rounds.flatMap(({ faults }) => faults)).toEqual([]);
    expect(rounds.reduce((sum, { accepted }) => sum + accepted, 0)).toBeGreaterThan(3);
  },
  TIME_LIMIT_MS,
);
