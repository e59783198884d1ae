import { randomUUID } from 'node:crypto';
import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import type { PullDetails } from './edge/pull-details.ts';

/**
 * Details with the id of the set-up they name in words ("second fitting"): that of the same combination with the same
 * words, made where there is none yet. Refused without a combination, since a set-up is a time of one on the brake.
 */
export async function withSetUp(book: Book, details: PullDetails, now: string): Promise<Result<PullDetails>> {
  const { setUpWords, ...rest } = details;
  if (setUpWords === undefined) return accepted(rest);
  if (setUpWords === null) return accepted({ ...rest, setUpId: null });
  const { combinationId } = rest;
  if (!combinationId) {
    return refused(
      remark(
        'refusal',
        'set-up-without-combination',
        `The set-up "${setUpWords}" needs its combination: a set-up is one time of a combination on the brake. Say which combination.`,
      ),
    );
  }
  const same = (await book.setUps()).find(
    (one) => one.combinationId === combinationId && one.notes.toLowerCase() === setUpWords.toLowerCase(),
  );
  if (same) return accepted({ ...rest, setUpId: same.id });
  const setUp = { id: randomUUID(), combinationId, fittedAt: rest.recordedAt ?? now, notes: setUpWords };
  await book.addSetUp(setUp);
  return accepted({ ...rest, setUpId: setUp.id });
}
