import type { PullArray } from '../scatter/index.ts';

/** One pull of a plan, made or not: what its place in the order says about what it shares with others. */
export interface DesignedPull extends Pick<PullArray, 'setUp' | 'session' | 'cell' | 'hours'> {
  key: string;
}

/** How many pulls each key has. */
export function countsByKey(pulls: readonly { key: string }[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const { key } of pulls) counts.set(key, (counts.get(key) ?? 0) + 1);
  return counts;
}
