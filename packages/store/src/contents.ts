import type { Connection, Rows } from './connection.ts';
import { schemaVersion } from './migrate.ts';
import type { BookContents, BookInfo } from './model.ts';
import { readCombinations } from './rows/combinations.ts';
import { readEngines } from './rows/engines.ts';
import { readFiles } from './rows/files.ts';
import { readLog } from './rows/log.ts';
import { readPackages } from './rows/packages.ts';
import { readPullHeads, readPulls } from './rows/pulls.ts';
import { readSessions } from './rows/sessions.ts';
import { readSetUps } from './rows/set-ups.ts';
import { readTrials } from './rows/trials.ts';

export async function readInfo(rows: Rows, { database }: Connection): Promise<BookInfo> {
  const { id, name, invented, createdAt } = await rows
    .selectFrom('book')
    .selectAll()
    .executeTakeFirstOrThrow();
  return { id, name, invented: invented === 1, createdAt, schemaVersion: schemaVersion(database) };
}

/** Everything but the original bytes, in the order in which it came into the book. */
export async function readContents(rows: Rows, connection: Connection): Promise<BookContents> {
  const ids = (await readPullHeads(rows)).map(({ id }) => id);
  return {
    info: await readInfo(rows, connection),
    engines: await readEngines(rows),
    combinations: await readCombinations(rows),
    packages: await readPackages(rows),
    setUps: await readSetUps(rows),
    sessions: await readSessions(rows),
    pulls: await readPulls(rows, ids, connection.folder),
    files: await readFiles(rows),
    trials: await readTrials(rows),
    log: await readLog(rows),
  };
}
