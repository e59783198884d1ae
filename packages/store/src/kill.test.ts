import { join } from 'node:path';
import { expect, test } from 'vitest';
import { killRounds } from './testing/kill-rounds.ts';
import { killSafety } from './testing/kill-safety.ts';
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

test(
  'the same while it amends, changes, undoes and makes backups: nothing that was said is lost, and log and state agree',
  async () => {
    const folder = join(temporaryFolder(), 'book');
    const rounds = await killRounds({ folder, rounds: 8, seed: 'edits', work: 'everything' });
    expect(rounds.flatMap(({ faults }) => faults)).toEqual([]);
    expect(rounds.reduce((sum, { edits }) => sum + edits, 0)).toBeGreaterThan(8);
  },
  TIME_LIMIT_MS,
);

test(
  'killed in a merge, a backup, a rescue: what was there is there whole, the act whole or not at all, and it can be done again',
  async () => {
    const rounds = await killSafety({ folder: temporaryFolder(), rounds: 9, seed: 'safety' });
    expect(rounds.flatMap(({ faults }) => faults)).toEqual([]);
    // Otherwise nothing was put to the test.
    expect(rounds.filter(({ isKilled }) => isKilled).length).toBeGreaterThan(0);
  },
  TIME_LIMIT_MS,
);
