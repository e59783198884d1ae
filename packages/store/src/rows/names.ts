import { sql } from 'kysely';
import type { Rows } from '../connection.ts';
import type { NamedKind } from '../model.ts';
import { isThere } from './withdrawn.ts';

/** A shorter beginning of an id would take names such as `A` for ids. */
const SHORTEST_BEGINNING = 4;

/** The highest character: everything that begins alike sorts before it. */
const AFTER_ALL = '\u{10ffff}';

/**
 * Things that a text can mean, the one added last first: the one of that id, those whose id begins so (four characters or
 * more), those of that name. Capitals of A to Z are forgiven in a name.
 */
export async function readNamed(
  rows: Rows,
  kind: NamedKind,
  given: string,
): Promise<{ id: string; name: string }[]> {
  const wanted = given.trim().toLowerCase();
  const name = sql.ref(`${kind}.${kind === 'trial' || kind === 'enquiry' ? 'question' : 'name'}`);
  const id = sql.ref(`${kind}.id`);
  const begins =
    wanted.length < SHORTEST_BEGINNING
      ? sql<boolean>`${id} = ${wanted}`
      : sql<boolean>`${id} >= ${wanted} and ${id} < ${wanted + AFTER_ALL}`;
  const { rows: found } = await sql<{ id: string; name: string }>`
    select ${id} as id, ${name} as name from ${sql.table(kind)}
    where (${begins} or lower(trim(${name})) = ${wanted}) and ${isThere(kind, `${kind}.id`)}
    order by sequence desc`.execute(rows);
  return found;
}

/** Id, name and engine of every combination, the one added last first; their sheets are not read. */
export async function readCombinationNames(
  rows: Rows,
): Promise<{ id: string; name: string; engineId: string }[]> {
  return rows
    .selectFrom('combination')
    .select(['id', 'name', 'engineId'])
    .where(isThere('combination', 'combination.id'))
    .orderBy('sequence', 'desc')
    .execute();
}

/** A day has fewer pulls than this: when older ones were added is not looked up. */
const MOST_A_DAY = 200;

/**
 * Names of the pulls of a day (ISO 8601 date) in a cell: as recorded, else as put into the book. `cell: null`: any.
 */
export async function readNamesOfDay(rows: Rows, day: string, cell: string | null): Promise<string[]> {
  const { rows: found } = await sql<{ name: string }>`
    select name from (
      select name, cell, id from pull where recordedAt >= ${day} and recordedAt < ${day + AFTER_ALL}
      union all
      select name, cell, id from (select * from pull order by sequence desc limit ${MOST_A_DAY}) as pull
      where recordedAt is null and (
        select substr(at, 1, ${day.length}) from log where subject = 'pull ' || pull.id order by log.id limit 1
      ) = ${day}
    ) as made
    where (${cell} is null or cell = ${cell}) and ${isThere('pull', 'made.id')}`.execute(rows);
  return found.map(({ name }) => name);
}
