import { sql } from 'kysely';
import { toJson } from '../json.ts';

/** Ids for `where id in`: one bound text, however many there are. */
export const amongIds = (ids: readonly string[]) =>
  sql<string>`(select value from json_each(${toJson(ids)}))`;
