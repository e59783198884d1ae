import { accepted, type Result } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import type { PullDetails } from './edge/pull-details.ts';
import { findNamed } from './find-named.ts';

/** Details with the whole id of the combination they name; refused where the book does not have it. */
export async function withCombination(book: Book, details: PullDetails): Promise<Result<PullDetails>> {
  if (!details.combinationId) return accepted(details);
  const found = await findNamed(book, ['combination'], details.combinationId, 'combination');
  return found.ok ? accepted({ ...details, combinationId: found.value.id }) : found;
}
