import type { Connection, Rows } from './connection.ts';
import { schemaVersion } from './migrate.ts';
import type { BookContents, BookInfo, BookOutline } from './model.ts';
import { readCells } from './rows/cells.ts';
import { readCombinations } from './rows/combinations.ts';
import { readCompressorMaps } from './rows/compressor-maps.ts';
import { readEngines } from './rows/engines.ts';
import { readEnquiries } from './rows/enquiries.ts';
import { readFiles } from './rows/files.ts';
import { readLayouts } from './rows/layouts.ts';
import { readLog } from './rows/log.ts';
import { readPackages } from './rows/packages.ts';
import { readPredictions } from './rows/predictions.ts';
import { readPublications } from './rows/publications.ts';
import { readPullHeads, readPulls } from './rows/pulls.ts';
import { readSessions } from './rows/sessions.ts';
import { readSetUps } from './rows/set-ups.ts';
import { readSettings } from './rows/settings.ts';
import { readSilenced } from './rows/silenced.ts';
import { readTrials } from './rows/trials.ts';
import { readWithdrawn } from './rows/withdrawn.ts';

export async function readInfo(rows: Rows, { database }: Connection): Promise<BookInfo> {
  const { id, name, invented, createdAt } = await rows
    .selectFrom('book')
    .selectAll()
    .executeTakeFirstOrThrow();
  return { id, name, invented: invented === 1, createdAt, schemaVersion: schemaVersion(database) };
}

/** Everything but channels and original bytes, in the order in which it came into the book. */
export async function readOutline(rows: Rows, connection: Connection): Promise<BookOutline> {
  return {
    info: await readInfo(rows, connection),
    engines: await readEngines(rows),
    combinations: await readCombinations(rows),
    packages: await readPackages(rows),
    setUps: await readSetUps(rows),
    sessions: await readSessions(rows),
    pulls: await readPullHeads(rows),
    files: await readFiles(rows),
    trials: await readTrials(rows),
    cells: await readCells(rows),
    layouts: await readLayouts(rows),
    silenced: await readSilenced(rows),
    predictions: await readPredictions(rows),
    compressorMaps: await readCompressorMaps(rows),
    publications: await readPublications(rows),
    enquiries: await readEnquiries(rows),
    settings: await readSettings(rows),
    withdrawn: await readWithdrawn(rows),
    log: await readLog(rows),
  };
}

/** The outline with the channels of every pull. */
export async function readContents(rows: Rows, connection: Connection): Promise<BookContents> {
  const outline = await readOutline(rows, connection);
  const ids = outline.pulls.map(({ id }) => id);
  return { ...outline, pulls: await readPulls(rows, ids, connection.folder) };
}
