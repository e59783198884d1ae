import { closeSync, openSync, readFileSync, writeFileSync, writeSync } from 'node:fs';
import { expect, test } from 'vitest';
import { damageOf } from './damage.ts';
import { faultsOfBook } from './database-faults.ts';
import { Database } from './driver.ts';
import { openBook } from './open-book.ts';
import { databaseFile } from './places.ts';
import { rescueBook } from './rescue/rescue-book.ts';
import { temporaryFolder } from './testing/temporary-folder.ts';
import { pull } from './testing/things.ts';

test('no book, nothing begun, a database of another program: that is not damage, and nothing is done to it', async () => {
  await expect(faultsOfBook(temporaryFolder())).rejects.toMatchObject({ code: 'missing' });
  const begun = temporaryFolder();
  writeFileSync(databaseFile(begun), '');
  await expect(faultsOfBook(begun)).rejects.toMatchObject({ code: 'missing' });
  const foreign = temporaryFolder();
  const database = new Database(databaseFile(foreign));
  database.exec('create table parts (id integer primary key)');
  database.close();
  const before = readFileSync(databaseFile(foreign));
  expect(damageOf(foreign)).toBeNull();
  await expect(faultsOfBook(foreign)).rejects.toMatchObject({ code: 'not a book' });
  expect(readFileSync(databaseFile(foreign)).equals(before)).toBe(true);
});

test('a book whose mark alone is damaged is a damaged book, and is rescued whole', async () => {
  const folder = temporaryFolder();
  const book = await openBook(folder, { create: { name: 'Shop' } });
  await book.addPulls([pull('one')]);
  const { pulls } = await book.contents();
  await book.close();
  // The mark of a program: bytes 68 to 71 of the header ("Database File Format" of the SQLite project, 1.3.15, from memory).
  const handle = openSync(databaseFile(folder), 'r+');
  writeSync(handle, Buffer.from([1, 2, 3, 4]), 0, 4, 68);
  closeSync(handle);
  await expect(openBook(folder)).rejects.toMatchObject({ code: 'damaged' });
  expect(damageOf(folder)).toBe('its mark is gone');
  await rescueBook(folder, () => null, new Date('2026-03-14T10:00:00.000Z'));
  const back = await openBook(folder);
  expect((await back.contents()).pulls).toEqual(pulls);
  await back.close();
});
