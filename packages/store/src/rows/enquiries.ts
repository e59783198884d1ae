import type { Enquiry } from '@pullbook/core/reach';
import { type Selectable, sql } from 'kysely';
import type { Rows } from '../connection.ts';
import { fromJson, toJson } from '../json.ts';
import type { EnquiryTable } from '../tables.ts';
import { amongIds } from './among-ids.ts';
import { isThere } from './withdrawn.ts';

/** All enquiries, or those of these combinations, in the order in which they came; withdrawn ones too. */
export async function readEnquiries(rows: Rows, combinationIds?: readonly string[]): Promise<Enquiry[]> {
  let query = rows.selectFrom('enquiry').selectAll().orderBy('sequence');
  if (combinationIds !== undefined) query = query.where('combinationId', 'in', amongIds(combinationIds));
  return (await query.execute()).map(enquiryFromRow);
}

export async function readEnquiry(rows: Rows, id: string): Promise<Enquiry | null> {
  const row = await rows.selectFrom('enquiry').selectAll().where('id', '=', id).executeTakeFirst();
  return row ? enquiryFromRow(row) : null;
}

export async function insertEnquiry(rows: Rows, enquiry: Enquiry): Promise<void> {
  assertKeepable(enquiry);
  const { asked, answer, pullIds, madeBy, became, cards, ...plain } = enquiry;
  await rows
    .insertInto('enquiry')
    .values({
      ...plain,
      asked: toJson(asked),
      answer: toJson(answer),
      pullIds: toJson(pullIds),
      madeBy: toJson(madeBy),
      became: toJson(became),
      cards: toJson(cards),
    })
    .execute();
}

/** What may be said of an enquiry after it was answered. */
export type EnquiryChange = Partial<Pick<Enquiry, 'became' | 'cards'>>;

export async function updateEnquiry(rows: Rows, id: string, { became, cards }: EnquiryChange): Promise<void> {
  await rows
    .updateTable('enquiry')
    .set({
      ...(became === undefined ? {} : { became: toJson(became) }),
      ...(cards === undefined ? {} : { cards: toJson(cards) }),
    })
    .where('id', '=', id)
    .execute();
}

function enquiryFromRow(row: Selectable<EnquiryTable>): Enquiry {
  const { sequence: _, asked, answer, pullIds, madeBy, became, cards, ...plain } = row;
  return {
    ...plain,
    asked: fromJson(asked),
    answer: fromJson(answer),
    pullIds: fromJson(pullIds),
    madeBy: fromJson(madeBy),
    became: fromJson(became),
    cards: fromJson(cards),
  };
}

/** JSON would keep what is no number as nothing, and an answer that was given can never be mended. */
function assertKeepable({ id, answer }: Enquiry): void {
  const { now, rungs } = answer.answer;
  if ([now, ...rungs].some(({ made }) => made !== null))
    throw new Error(`the answer of enquiry ${id} holds what its rungs were made of`);
  const place = placeOfNoNumber(answer, 'answer');
  if (place !== null) throw new Error(`enquiry ${id}: ${place} is no number`);
}

function placeOfNoNumber(value: unknown, place: string): string | null {
  if (typeof value === 'number') return Number.isFinite(value) ? null : place;
  if (typeof value !== 'object' || value === null) return null;
  for (const [key, one] of Object.entries(value)) {
    const found = placeOfNoNumber(one, `${place}.${key}`);
    if (found !== null) return found;
  }
  return null;
}

/** What a list finds enquiries by, without their answers, which are large; the one added last first. */
export async function readEnquiryNames(
  rows: Rows,
): Promise<{ id: string; question: string; combinationId: string; words: string }[]> {
  const found = await rows
    .selectFrom('enquiry')
    .select(['id', 'question', 'combinationId'])
    .select([
      sql<string>`concat_ws(' ', json_extract(answer, '$.combinationName'), json_extract(asked, '$.power'),
        json_extract(asked, '$.at'), json_extract(asked, '$.window'), json_extract(asked, '$.boostCap'))`.as(
        'asked',
      ),
      sql<string>`(select coalesce(group_concat(json_extract(change.value, '$.said.text'), ' '), '')
        from json_each(answer, '$.answer.rungs') as rung, json_each(rung.value, '$.changes') as change)`.as(
        'ways',
      ),
      sql<string>`(select coalesce(group_concat(t.question, ' '), '') from json_each(became) as made
        join trial t on t.id = json_extract(made.value, '$.trialId'))`.as('trials'),
    ])
    .where(isThere('enquiry', 'enquiry.id'))
    .orderBy('sequence', 'desc')
    .execute();
  return found.map(({ id, question, combinationId, asked, ways, trials }) => ({
    id,
    question,
    combinationId,
    words: `${question} ${asked} ${ways} ${trials}`.toLowerCase(),
  }));
}
