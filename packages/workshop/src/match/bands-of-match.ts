import type { MatchBands, MatchCase } from '@pullbook/core/airpath';
import { longWork } from '../long-work/long-work.ts';

export interface BandsAsked {
  /** Missing: 2,000, which leaves the ends of a band open by some 1.5 % of its width (one standard error). */
  draws?: number | undefined;
  /** Missing: 1. The same seed gives the same bands. */
  seed?: number | undefined;
  /** Ends the work: nobody waits for it any more. */
  signal?: AbortSignal | undefined;
}

export const USUAL_DRAWS = 2000;
export const USUAL_SEED = 1;

/** Bands of matches and of their differences against the first, by draws made side by side off the main thread. */
export async function bandsOfMatch(
  cases: readonly MatchCase[],
  { draws = USUAL_DRAWS, seed = USUAL_SEED, signal }: BandsAsked = {},
): Promise<MatchBands> {
  const options = signal === undefined ? {} : { signal };
  // Only what a match is computed from goes over to the threads.
  const plain = cases.map(({ input, spread }) => ({ input, spread }));
  const half = Math.ceil(draws / 2);
  const slices = [
    { from: 0, draws: half },
    { from: half, draws: draws - half },
  ].filter((slice) => slice.draws > 0);
  const drawn = await Promise.all(
    slices.map((slice) => longWork.run('drawMatch', { cases: plain, seed, ...slice }, options)),
  );
  return longWork.run('bandsOfDraws', drawn, { ...options, giveAway: true });
}
