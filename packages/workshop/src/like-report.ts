import type { UnitSystem } from '@pullbook/core/quantity';
import { accepted, type Result } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import type { ShownRemark, ViewOptions } from '@pullbook/views';
import { shownRemarks } from './edge/remark.ts';
import { type WrittenFields, writtenFields } from './edge/written-fields.ts';
import { airOf, carriedOf, pullToBeLike } from './like-pull.ts';
import { nextPullName } from './pull-moment.ts';
import type { PullHead } from './pull-views.ts';

/** What a new pull has in common with another, for a form. */
export interface LikeReport {
  schemaVersion: 1;
  like: { id: string; name: string; form: 'curve' | 'summary' };
  /** By the rule of `withLike`; `name` is that of the next pull of the day. */
  fields: WrittenFields;
  remarks: ShownRemark[];
}

/** The fields of a new pull filled in like another. `like`: `last` or a pull. */
export async function likeReport(
  book: Book,
  like: string,
  options: ViewOptions,
  now: string,
): Promise<Result<LikeReport>> {
  const found = await pullToBeLike(book, like);
  if (!found.ok) return found;
  const before = found.value;
  const air = await airOf(book, before, now);
  const shared: PullHead = {
    ...before,
    name: await nextPullName(book, now, before.cell),
    recordedAt: null,
    weather: air.weather,
    carried: carriedOf(before),
    outcome: 'completed',
  };
  return accepted({
    schemaVersion: 1,
    like: { id: before.id, name: before.name, form: before.form },
    fields: writtenFields(shared, await setUpWordsOf(book, before), options.units),
    remarks: shownRemarks(air.remarks, options),
  });
}

/** What is written down about a pull, for a form that mends it. */
export async function writtenReport(
  book: Book,
  id: string,
  units: UnitSystem,
): Promise<Result<{ schemaVersion: 1; fields: WrittenFields }>> {
  const found = await pullToBeLike(book, id);
  if (!found.ok) return found;
  const fields = writtenFields(found.value, await setUpWordsOf(book, found.value), units);
  return accepted({ schemaVersion: 1, fields });
}

async function setUpWordsOf(book: Book, { setUpId }: PullHead): Promise<string> {
  return (await book.setUps()).find(({ id }) => id === setUpId)?.notes ?? '';
}
