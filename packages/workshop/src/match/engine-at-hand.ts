import type { Combination } from '@pullbook/core/combination';
import type { Trial } from '@pullbook/core/trial';
import type { Book, PullHead } from '@pullbook/store';
import { pullsThatCount } from './pulls-that-count.ts';

/** Everything the book has about one engine that a match of it may rest on. */
export interface EngineAtHand {
  combinations: Combination[];
  /** By combination; one without a pull that counts is not in it. */
  pulls: Map<string, PullHead[]>;
}

/** All combinations of an engine with their pulls that count. */
export async function engineAtHand(book: Book, engineId: string, trial: Trial | null): Promise<EngineAtHand> {
  const ids = (await book.combinationNames()).filter((one) => one.engineId === engineId).map(({ id }) => id);
  const found = await Promise.all(ids.map((id) => book.combination(id)));
  const combinations = found.filter((one) => one !== null);
  return { combinations, pulls: await pullsThatCount(book, ids, trial) };
}

/** Those that were pulled. */
export const pulledOf = ({ combinations, pulls }: EngineAtHand): Combination[] =>
  combinations.filter(({ id }) => pulls.has(id));
