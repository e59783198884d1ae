import type { Rows } from '../connection.ts';
import { BookTrouble } from '../model.ts';
import { isWithdrawn } from '../rows/withdrawn.ts';

/** What a thing rests on. */
export interface RestsOn {
  engineIds?: readonly string[];
  combinationIds?: readonly string[];
  packageIds?: readonly string[];
  pullIds?: readonly string[];
}

/** Trouble where something that a thing rests on was withdrawn (meanwhile, or before it is to come back); else `null`. */
export async function missingOf(rows: Rows, restsOn: RestsOn): Promise<BookTrouble | null> {
  const needed = [
    ...(restsOn.engineIds ?? []).map((id) => ({ kind: 'engine' as const, id })),
    ...(restsOn.combinationIds ?? []).map((id) => ({ kind: 'combination' as const, id })),
    ...(restsOn.packageIds ?? []).map((id) => ({ kind: 'package' as const, id })),
    ...(restsOn.pullIds ?? []).map((id) => ({ kind: 'pull' as const, id })),
  ];
  for (const { kind, id } of needed) {
    if (!(await isWithdrawn(rows, kind, id))) continue;
    const { name } = await rows
      .selectFrom(kind)
      .select('name')
      .where('id', '=', id)
      .executeTakeFirstOrThrow();
    return new BookTrouble(
      'changed meanwhile',
      `The ${kind} "${name}" was taken out of the book by an undo. Nothing was changed. Bring it back first (History, or "pullbook undo"), or do without it.`,
    );
  }
  return null;
}
