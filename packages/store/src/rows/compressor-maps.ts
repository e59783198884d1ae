import type { CompressorMap } from '@pullbook/core/airpath';
import type { Selectable } from 'kysely';
import type { Rows } from '../connection.ts';
import { fromJson, toJson } from '../json.ts';
import type { CompressorMapTable } from '../tables.ts';

/** All maps, or the one of that id, in the order in which they came; withdrawn ones too. */
export async function readCompressorMaps(rows: Rows, id?: string): Promise<CompressorMap[]> {
  let query = rows.selectFrom('compressorMap').selectAll().orderBy('sequence');
  if (id !== undefined) query = query.where('id', '=', id);
  return (await query.execute()).map(mapFromRow);
}

export async function insertCompressorMap(rows: Rows, map: CompressorMap): Promise<void> {
  await rows.insertInto('compressorMap').values(rowFromMap(map)).execute();
}

/** Puts the map as given in the place of the stored one. */
export async function replaceCompressorMap(rows: Rows, map: CompressorMap): Promise<void> {
  await rows.updateTable('compressorMap').set(rowFromMap(map)).where('id', '=', map.id).execute();
}

function mapFromRow(row: Selectable<CompressorMapTable>): CompressorMap {
  const { sequence: _, reference, geometry, points, invented, ...plain } = row;
  return {
    ...plain,
    reference: fromJson(reference),
    geometry: fromJson(geometry),
    points: fromJson(points),
    invented: invented === 1,
  };
}

function rowFromMap({ reference, geometry, points, invented, ...plain }: CompressorMap) {
  return {
    ...plain,
    reference: toJson(reference),
    geometry: toJson(geometry),
    points: toJson(points),
    invented: Number(invented),
  };
}
