import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { setImmediate as breathe } from 'node:timers/promises';
import type { Channel } from '@pullbook/core/pull';
import { channelsHash } from './channels-hash.ts';
import { Database } from './driver.ts';
import { noBookIn, ofAnotherProgram, whatItIs } from './is-a-book.ts';
import { databaseFile } from './places.ts';
import { samplesFromBytes } from './samples.ts';
import { asBookTrouble } from './trouble.ts';

/**
 * What is wrong with a database, in words, and the files it names. Reads everything and changes nothing: SQLite's own
 * integrity check, and for every pull whether its channels are those that were stored.
 */
export async function faultsOfDatabase(
  file: string,
): Promise<{ faults: string[]; files: { hash: string; name: string }[] }> {
  const faults: string[] = [];
  let files: { hash: string; name: string }[] = [];
  try {
    const database = new Database(file, { readonly: true, fileMustExist: true });
    try {
      const said = database.pragma('integrity_check(5)') as { integrity_check: string }[];
      faults.push(...said.map((one) => one.integrity_check).filter((text) => text !== 'ok'));
      files = database.prepare('select hash, name from file order by sequence').all() as typeof files;
      const channels = database.prepare('select * from channel where pullId = ? order by place');
      const pulls = database.prepare('select id, name, channelsHash from pull order by sequence').all();
      for (const { id, name, channelsHash: stored } of pulls as StoredPull[]) {
        const found = (channels.all(id) as StoredChannel[]).map(({ samples, ...rest }) => ({
          ...rest,
          values: samplesFromBytes(samples),
        }));
        if (channelsHash(found) !== stored)
          faults.push(`the channels of the pull "${name}", ${id}, are not those that were stored`);
        await breathe();
      }
    } finally {
      database.close();
    }
  } catch (failure) {
    if (!(failure instanceof Error && 'code' in failure)) throw failure;
    faults.push(failure.message);
  }
  return { faults, files };
}

/**
 * What is wrong with the database of the book in a folder.
 *
 * @throws {BookTrouble} where there is none, or a database of another program: that is not damage
 */
export async function faultsOfBook(folder: string): Promise<string[]> {
  const root = resolve(folder);
  const file = databaseFile(root);
  if (!existsSync(file)) throw noBookIn(root);
  try {
    const database = new Database(file, { readonly: true });
    try {
      const is = whatItIs(database);
      if (is === 'empty') throw noBookIn(root);
      if (is === 'foreign') throw ofAnotherProgram(root);
    } finally {
      database.close();
    }
  } catch (failure) {
    throw asBookTrouble(failure, root);
  }
  return (await faultsOfDatabase(file)).faults;
}

interface StoredPull {
  id: string;
  name: string;
  channelsHash: string;
}

type StoredChannel = Omit<Channel, 'values'> & { samples: Uint8Array };
