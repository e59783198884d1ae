import type { Result } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import { editTrial, type PullEdit } from './edit-trial.ts';

/** Takes pulls into a trial: they count, but for those that were broken off in the cell. */
export async function takeIntoTrial(
  book: Book,
  trial: string,
  pullIds: readonly string[],
): Promise<Result<{ id: string }>> {
  const pulls = (await book.pullHeadsOf(pullIds)).map(
    ({ id, outcome }): PullEdit =>
      outcome === 'aborted'
        ? { pullId: id, role: 'rejected', reason: 'aborted in the cell' }
        : { pullId: id, role: 'counted' },
  );
  return editTrial(book, trial, { pulls }, 'taken in as they were imported');
}
