import type { Engine } from '@pullbook/core/combination';
import type { Rows } from '../connection.ts';

export async function readEngines(rows: Rows): Promise<Engine[]> {
  const found = await rows.selectFrom('engine').selectAll().orderBy('sequence').execute();
  return found.map(({ id, name, buildRevision, notes, invented }) => ({
    id,
    name,
    buildRevision,
    notes,
    invented: invented === 1,
  }));
}

/** Puts the engine as given in the place of the stored one. */
export async function replaceEngine(rows: Rows, { id, name, buildRevision, notes }: Engine): Promise<void> {
  await rows.updateTable('engine').set({ name, buildRevision, notes }).where('id', '=', id).execute();
}

export async function insertEngine(rows: Rows, engine: Engine): Promise<void> {
  const { id, name, buildRevision, notes, invented } = engine;
  await rows
    .insertInto('engine')
    .values({ id, name, buildRevision, notes, invented: Number(invented) })
    .execute();
}
