import type { Trial } from '@pullbook/core/trial';
import type { Book, PullHead } from '@pullbook/store';

/**
 * Pulls of combinations on which a match may rest, by combination, in the order in which they were added: completed curves that no
 * trial rejects or holds as a warm-up. Within a trial its own word on a pull goes first.
 */
export async function pullsThatCount(
  book: Book,
  combinationIds: readonly string[],
  trial: Trial | null,
): Promise<Map<string, PullHead[]>> {
  const heads = (await book.pullHeadsWith(combinationIds)).reverse();
  const trialIds = await book.trialIdsOfPulls(heads.map(({ id }) => id));
  const setAside = new Set(
    (await book.trialsOf(trialIds)).flatMap(({ pulls }) =>
      pulls.flatMap(({ pullId, role }) => (role === 'counted' ? [] : [pullId])),
    ),
  );
  for (const { pullId, role } of trial?.pulls ?? []) {
    if (role === 'counted') setAside.delete(pullId);
    else setAside.add(pullId);
  }
  const byCombination = new Map<string, PullHead[]>();
  for (const head of heads) {
    const { id, combinationId, form, outcome } = head;
    if (combinationId === null || form !== 'curve' || outcome !== 'completed' || setAside.has(id)) continue;
    byCombination.set(combinationId, [...(byCombination.get(combinationId) ?? []), head]);
  }
  return byCombination;
}
