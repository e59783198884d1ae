import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import type { Book, PullAmendment } from '@pullbook/store';
import { amendmentWithoutReason } from './amendment-reason.ts';
import type { PullDetails } from './edge/pull-details.ts';
import { withSaid } from './edge/text-fields.ts';
import { findPull } from './find-named.ts';
import { onLatest } from './on-latest.ts';
import type { PullHead } from './pull-views.ts';
import { sessionFor } from './session.ts';
import { withSetUp } from './set-up.ts';
import { treated, treatmentTrouble } from './treatment.ts';
import { withCombination } from './with-combination.ts';

/**
 * Mends what was written down about a pull: its combination, weather, correction carried, notes … Never its channels.
 * Tune, places, notes, events, sweep and treatment given are added to what stands; what is `null` is cleared. The log
 * keeps both sides with the reason.
 */
export async function amendPull(
  book: Book,
  id: string,
  details: PullDetails,
  reason: string,
  stamp?: string,
): Promise<Result<{ id: string }>> {
  if (reason.trim() === '') return amendmentWithoutReason();
  const found = await findPull(book, id);
  if (!found.ok) return found;
  return onLatest(book, `pull ${found.value.id}`, stamp, async (latest) => {
    const [before] = await book.pullHeadsOf([found.value.id]);
    if (!before) return found;
    const amendment = await amendmentOf(book, before, details);
    if (!amendment.ok) return amendment;
    await book.amendPull(before.id, amendment.value, reason.trim(), latest);
    return accepted({ id: before.id });
  });
}

async function amendmentOf(
  book: Book,
  before: PullHead,
  details: PullDetails,
): Promise<Result<PullAmendment>> {
  const placed = await withCombination(book, details);
  if (!placed.ok) return placed;
  const combinationId =
    placed.value.combinationId === undefined ? before.combinationId : placed.value.combinationId;
  const reading = await readingOf(book, before, details);
  if (!reading.ok) return reading;
  const fitted = await withSetUp(book, { ...placed.value, combinationId }, new Date().toISOString());
  if (!fitted.ok) return fitted;
  const { invented: _, combinationId: __, sweep, treatment, tune, places, ...amendment } = fitted.value;
  const merged: PullAmendment = { ...amendment, ...reading.value };
  if (placed.value.combinationId !== undefined) {
    merged.combinationId = combinationId;
    // A set-up belongs to its combination: another one leaves it behind.
    if (combinationId !== before.combinationId && merged.setUpId === undefined) merged.setUpId = null;
  }
  if (details.tune) merged.tune = withSaid(before.tune, details.tune);
  if (details.places) merged.places = withSaid(before.places, details.places);
  if (details.notes) merged.notes = [...before.notes, ...details.notes];
  if (details.events) merged.events = [...before.events, ...details.events];
  if (details.recordedAt !== undefined || details.cell !== undefined) {
    const recordedAt = details.recordedAt === undefined ? before.recordedAt : details.recordedAt;
    const cell = details.cell === undefined ? before.cell : details.cell;
    merged.sessionId = await sessionFor(book, { recordedAt, cell });
  }
  if (Object.keys(merged).length === 0) {
    return refused(remark('refusal', 'nothing-to-amend', 'Nothing to amend was given.'));
  }
  return accepted(merged);
}

/** Sweep and treatment with what was said put over what stands. */
async function readingOf(
  book: Book,
  before: PullHead,
  { sweep: ofSweep, treatment }: PullDetails,
): Promise<Result<Pick<PullAmendment, 'sweep' | 'treatment'>>> {
  const sweep = { ...before.sweep, ...ofSweep };
  const amended = ofSweep ? { sweep } : {};
  if (!treatment) return accepted(amended);
  const { channels } = (await book.pull(before.id))!;
  const [first, ...others] = treatmentTrouble({ ...before, channels, sweep }, treatment);
  if (first) return refused(first, ...others);
  return accepted({ ...amended, treatment: treated(before.treatment, treatment) });
}
