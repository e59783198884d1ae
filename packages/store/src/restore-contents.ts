import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Channel, OriginalFile, Pull } from '@pullbook/core/pull';
import { addOriginal } from './add-original.ts';
import type { Rows } from './connection.ts';
import { type Book, type BookOutline, BookTrouble } from './model.ts';
import { insertBookRow, openConnection } from './open-book.ts';
import { databaseFile } from './places.ts';
import { insertCell } from './rows/cells.ts';
import { insertCombination } from './rows/combinations.ts';
import { insertCompressorMap } from './rows/compressor-maps.ts';
import { insertEngine } from './rows/engines.ts';
import { insertEnquiry } from './rows/enquiries.ts';
import { insertFile } from './rows/files.ts';
import { keepLayout } from './rows/layouts.ts';
import { insertLogEntry } from './rows/log.ts';
import { insertPackage } from './rows/packages.ts';
import { insertPrediction } from './rows/predictions.ts';
import { insertPublication } from './rows/publications.ts';
import { insertPull } from './rows/pulls.ts';
import { insertSession } from './rows/sessions.ts';
import { insertSetUp } from './rows/set-ups.ts';
import { keepSettings } from './rows/settings.ts';
import { keepSilenced } from './rows/silenced.ts';
import { insertTrial } from './rows/trials.ts';
import { insertWithdrawn } from './rows/withdrawn.ts';
import { bookOver } from './sqlite-book.ts';
import { writing } from './transaction.ts';

/** Where the large things of a book to be restored come from, one at a time. */
export interface RestoreSource {
  channelsOf: (pull: Omit<Pull, 'channels'>) => Channel[] | Promise<Channel[]>;
  originalOf: (file: OriginalFile) => Uint8Array | Promise<Uint8Array>;
}

/**
 * Makes a book of everything another had: `contents()` of the new one is the same, its id, order and log with it.
 * Give a folder that may be thrown away: killed on the way, it holds a part. Throws `BookTrouble` where there is a book
 * already.
 */
export async function restoreContents(
  folder: string,
  outline: BookOutline,
  source: RestoreSource,
): Promise<Book> {
  const root = resolve(folder);
  if (existsSync(databaseFile(root))) {
    throw new BookTrouble(
      'exists',
      `There is a book in ${root} already. Nothing was changed. Name another folder.`,
    );
  }
  const connection = await openConnection(root, 5000, (opened) => insertBookRow(opened, outline.info));
  try {
    for (const file of outline.files) {
      await addOriginal(connection, file, await source.originalOf(file), (rows) => insertFile(rows, file));
    }
    await writing(connection, (rows) => insertAll(rows, outline, source));
    return bookOver(connection);
  } catch (failure) {
    await connection.rows.destroy();
    throw failure;
  }
}

/** In the order in which each thing may refer to the others. */
async function insertAll(rows: Rows, outline: BookOutline, { channelsOf }: RestoreSource): Promise<void> {
  for (const engine of outline.engines) await insertEngine(rows, engine);
  for (const item of outline.packages) await insertPackage(rows, item);
  for (const combination of outline.combinations) await insertCombination(rows, combination);
  for (const setUp of outline.setUps) await insertSetUp(rows, setUp);
  for (const session of outline.sessions) await insertSession(rows, session);
  for (const pull of outline.pulls) await insertPull(rows, { ...pull, channels: await channelsOf(pull) });
  for (const trial of outline.trials) await insertTrial(rows, trial);
  for (const cell of outline.cells) await insertCell(rows, cell);
  for (const layout of outline.layouts) await keepLayout(rows, layout);
  for (const one of outline.silenced) await keepSilenced(rows, one);
  for (const prediction of outline.predictions) await insertPrediction(rows, prediction);
  for (const map of outline.compressorMaps) await insertCompressorMap(rows, map);
  for (const one of outline.publications) await insertPublication(rows, one);
  for (const one of outline.enquiries) await insertEnquiry(rows, one);
  await keepSettings(rows, outline.settings);
  for (const one of outline.withdrawn) await insertWithdrawn(rows, one);
  for (const entry of outline.log) await insertLogEntry(rows, entry);
}
