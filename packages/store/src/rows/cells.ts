import type { Cell } from '@pullbook/core/pull';
import type { Rows } from '../connection.ts';
import { fromJson, toJson } from '../json.ts';

/** All cells, or the one of that id, in the order in which they came. */
export async function readCells(rows: Rows, id?: string): Promise<Cell[]> {
  let query = rows.selectFrom('cell').selectAll().orderBy('sequence');
  if (id !== undefined) query = query.where('id', '=', id);
  const found = await query.execute();
  return found.map(({ sequence: _, instruments, ...plain }) => ({
    ...plain,
    instruments: fromJson(instruments),
  }));
}

export async function insertCell(rows: Rows, cell: Cell): Promise<void> {
  await rows.insertInto('cell').values(rowFromCell(cell)).execute();
}

/**
 * Puts the cell as given in the place of the stored one. Under another name its pulls and sessions follow: they name the
 * cell, and it is the same one.
 */
export async function replaceCell(rows: Rows, before: Cell, after: Cell): Promise<void> {
  await rows.updateTable('cell').set(rowFromCell(after)).where('id', '=', before.id).execute();
  if (before.name === after.name) return;
  await rows.updateTable('pull').set({ cell: after.name }).where('cell', '=', before.name).execute();
  await rows.updateTable('session').set({ cell: after.name }).where('cell', '=', before.name).execute();
}

function rowFromCell({ instruments, ...plain }: Cell) {
  return { ...plain, instruments: toJson(instruments) };
}
