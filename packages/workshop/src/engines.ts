import type { Engine } from '@pullbook/core/combination';
import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import { amendmentWithoutReason } from './amendment-reason.ts';
import { findNamed } from './find-named.ts';
import { onLatest } from './on-latest.ts';

/** An engine with what a change made from it gives back. */
export type EngineRow = Engine & { stamp: string };

/** The engines of the book. */
export async function engineRows(book: Book): Promise<EngineRow[]> {
  return Promise.all(
    (await book.engines()).map(async (engine) => ({
      ...engine,
      stamp: await book.stamp(`engine ${engine.id}`),
    })),
  );
}

/** What may be changed of an engine; missing: stays. */
export interface EngineChange {
  name?: string | undefined;
  buildRevision?: string | undefined;
  notes?: string | undefined;
}

/** Gives an engine another name, build revision or note; the log keeps both sides with the reason. */
export async function changeEngine(
  book: Book,
  given: string,
  change: EngineChange,
  reason: string,
  stamp?: string,
): Promise<Result<{ id: string }>> {
  if (reason.trim() === '') return amendmentWithoutReason();
  const found = await findNamed(book, ['engine'], given, 'engine');
  if (!found.ok) return found;
  const { id } = found.value;
  const name = change.name?.trim();
  const same = (await book.engines()).find(
    (one) => one.id !== id && one.name.toLowerCase() === name?.toLowerCase(),
  );
  if (name === '' || same) {
    const why = same ? `There is an engine "${same.name}" already.` : 'An engine needs a name.';
    return refused(remark('refusal', 'engine-name', `${why} Give it one of its own.`));
  }
  if (Object.values(change).every((value) => value === undefined)) {
    return refused(
      remark(
        'refusal',
        'nothing-to-change',
        'Nothing to change was given: a name, a build revision or notes.',
      ),
    );
  }
  return onLatest(book, `engine ${id}`, stamp, async (latest) => {
    const before = (await book.engines()).find((one) => one.id === id);
    if (!before) throw new Error(`Engine ${id} was found but is not there.`);
    const after: Engine = {
      ...before,
      name: name ?? before.name,
      buildRevision: change.buildRevision?.trim() ?? before.buildRevision,
      notes: change.notes?.trim() ?? before.notes,
    };
    await book.changeEngine(after, reason.trim(), latest);
    return accepted({ id });
  });
}
