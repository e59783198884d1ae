import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import type { OriginalFile } from '@pullbook/core/pull';
import { addOriginal } from './add-original.ts';
import type { Rows } from './connection.ts';
import { type Book, type BookContents, BookTrouble } from './model.ts';
import { insertBookRow, openConnection } from './open-book.ts';
import { databaseFile } from './places.ts';
import { insertCombination } from './rows/combinations.ts';
import { insertEngine } from './rows/engines.ts';
import { insertFile } from './rows/files.ts';
import { insertLogEntry } from './rows/log.ts';
import { insertPackage } from './rows/packages.ts';
import { insertPull } from './rows/pulls.ts';
import { insertSession } from './rows/sessions.ts';
import { insertSetUp } from './rows/set-ups.ts';
import { insertTrial } from './rows/trials.ts';
import { bookOver } from './sqlite-book.ts';
import { writing } from './transaction.ts';

/**
 * Makes a book of everything another had: `contents()` of the new one is the same, its id, order and log with it.
 * `originalOf` gives the bytes of each file. Give a folder that may be thrown away: killed on the way, it holds a part.
 * Throws `BookTrouble` where there is a book already.
 */
export async function restoreContents(
  folder: string,
  contents: BookContents,
  originalOf: (file: OriginalFile) => Uint8Array | Promise<Uint8Array>,
): Promise<Book> {
  const root = resolve(folder);
  if (existsSync(databaseFile(root))) {
    throw new BookTrouble(
      'exists',
      `There is a book in ${root} already. Nothing was changed. Name another folder.`,
    );
  }
  const connection = await openConnection(root, 5000, (opened) => insertBookRow(opened, contents.info));
  try {
    for (const file of contents.files) {
      await addOriginal(connection, file, await originalOf(file), (rows) => insertFile(rows, file));
    }
    await writing(connection, (rows) => insertAll(rows, contents));
    return bookOver(connection);
  } catch (failure) {
    await connection.rows.destroy();
    throw failure;
  }
}

/** In the order in which each thing may refer to the others. */
async function insertAll(rows: Rows, contents: BookContents): Promise<void> {
  for (const engine of contents.engines) await insertEngine(rows, engine);
  for (const item of contents.packages) await insertPackage(rows, item);
  for (const combination of contents.combinations) await insertCombination(rows, combination);
  for (const setUp of contents.setUps) await insertSetUp(rows, setUp);
  for (const session of contents.sessions) await insertSession(rows, session);
  for (const pull of contents.pulls) await insertPull(rows, pull);
  for (const trial of contents.trials) await insertTrial(rows, trial);
  for (const entry of contents.log) await insertLogEntry(rows, entry);
}
