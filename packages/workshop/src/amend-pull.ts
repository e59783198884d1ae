import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import type { Book, PullAmendment } from '@pullbook/store';
import type { PullDetails } from './edge/pull-details.ts';
import { findOne } from './find-one.ts';
import { sessionFor } from './session.ts';
import { withSetUp } from './set-up.ts';
import { withCombination } from './with-combination.ts';

/**
 * Mends what was written down about a pull: its combination, weather, correction carried, notes … Never its channels.
 * Tune, places and notes given are added to what stands. The log keeps both sides with the reason.
 */
export async function amendPull(
  book: Book,
  id: string,
  details: PullDetails,
  reason: string,
): Promise<Result<{ id: string }>> {
  if (reason.trim() === '') {
    return refused(
      remark(
        'refusal',
        'no-reason',
        'An amendment needs a reason: say what was entered wrong, or what became known.',
      ),
    );
  }
  const found = findOne(await book.pullHeads(), id, 'pull');
  if (!found.ok) return found;
  const before = found.value;
  const placed = await withCombination(book, details);
  if (!placed.ok) return placed;
  const combinationId =
    placed.value.combinationId === undefined ? before.combinationId : placed.value.combinationId;
  const fitted = await withSetUp(book, { ...placed.value, combinationId }, new Date().toISOString());
  if (!fitted.ok) return fitted;
  const { invented: _, combinationId: __, ...amendment } = fitted.value;
  const merged: PullAmendment = { ...amendment };
  if (placed.value.combinationId !== undefined) {
    merged.combinationId = combinationId;
    // A set-up belongs to its combination: another one leaves it behind.
    if (combinationId !== before.combinationId && merged.setUpId === undefined) merged.setUpId = null;
  }
  if (details.tune) merged.tune = { ...before.tune, ...details.tune };
  if (details.places) merged.places = { ...before.places, ...details.places };
  if (details.notes) merged.notes = [...before.notes, ...details.notes];
  if (details.recordedAt !== undefined || details.cell !== undefined) {
    const recordedAt = details.recordedAt === undefined ? before.recordedAt : details.recordedAt;
    const cell = details.cell === undefined ? before.cell : details.cell;
    merged.sessionId = await sessionFor(book, { recordedAt, cell });
  }
  if (Object.keys(merged).length === 0) {
    return refused(remark('refusal', 'nothing-to-amend', 'Nothing to amend was given.'));
  }
  await book.amendPull(before.id, merged, reason.trim());
  return accepted({ id: before.id });
}
