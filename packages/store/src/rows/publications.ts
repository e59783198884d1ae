import type { Publication } from '@pullbook/core/publication';
import type { Selectable } from 'kysely';
import type { Rows } from '../connection.ts';
import { fromJson, toJson } from '../json.ts';
import type { PublicationTable } from '../tables.ts';
import { amongIds } from './among-ids.ts';

/** All publications, or those of these trials, in the order in which they came; withdrawn ones too. */
export async function readPublications(rows: Rows, trialIds?: readonly string[]): Promise<Publication[]> {
  let query = rows.selectFrom('publication').selectAll().orderBy('sequence');
  if (trialIds !== undefined) query = query.where('trialId', 'in', amongIds(trialIds));
  return (await query.execute()).map(publicationFromRow);
}

export async function readPublication(rows: Rows, id: string): Promise<Publication | null> {
  const row = await rows.selectFrom('publication').selectAll().where('id', '=', id).executeTakeFirst();
  return row ? publicationFromRow(row) : null;
}

export async function insertPublication(rows: Rows, publication: Publication): Promise<void> {
  assertNumbers(publication);
  const { kinds, files, pullIds, figures, links, privateToo, ...plain } = publication;
  await rows
    .insertInto('publication')
    .values({
      ...plain,
      kinds: toJson(kinds),
      files: toJson(files),
      pullIds: toJson(pullIds),
      figures: toJson(figures),
      links: toJson(links),
      privateToo: Number(privateToo),
    })
    .execute();
}

/** The one thing of a publication that grows. */
export async function updateLinks(rows: Rows, id: string, links: Publication['links']): Promise<void> {
  await rows
    .updateTable('publication')
    .set({ links: toJson(links) })
    .where('id', '=', id)
    .execute();
}

function publicationFromRow(row: Selectable<PublicationTable>): Publication {
  const { sequence: _, kinds, files, pullIds, figures, links, privateToo, ...plain } = row;
  return {
    ...plain,
    kinds: fromJson(kinds),
    files: fromJson(files),
    pullIds: fromJson(pullIds),
    figures: fromJson(figures),
    links: fromJson(links),
    privateToo: privateToo === 1,
  };
}

/** JSON would keep what is no number as nothing, and what was said outside can never be mended. */
function assertNumbers({ figures }: Publication): void {
  for (const { id, key, value, low, high, engineSpeedRpm } of figures) {
    const numbers = [value, low, high, engineSpeedRpm].filter((one) => one !== null);
    if (!numbers.every(Number.isFinite))
      throw new Error(`the published figure ${id} of ${key} has a figure that is no number`);
  }
}
