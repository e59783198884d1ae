import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { openBook } from './open-book.ts';
import { originalPath } from './originals.ts';
import { otherProgramHolding } from './testing/other-program.ts';
import { temporaryFolder } from './testing/temporary-folder.ts';
import { fileOf, pull } from './testing/things.ts';

const known = fileOf('rpm,torque\n2000,300\n');
const orphan = fileOf('rpm,torque\n2000,301\n');

/** A book with one file, an original that no row knows, a lost part and a part that is being written. */
async function untidyBook(): Promise<{ folder: string; lost: string; young: string }> {
  const folder = temporaryFolder();
  const book = await openBook(folder, { create: { name: 'Test book' } });
  await book.addFileWithPulls(known.file, known.bytes, [pull('one', { fileHash: known.file.hash })]);
  await book.close();
  const path = originalPath(folder, orphan.file.hash);
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, orphan.bytes);
  const lost = `${path}.1.part`;
  const young = `${path}.2.part`;
  writeFileSync(lost, 'rpm,tor');
  writeFileSync(young, 'rpm,tor');
  const twoMinutesAgo = Date.now() / 1000 - 120;
  utimesSync(lost, twoMinutesAgo, twoMinutesAgo);
  return { folder, lost, young };
}

test('opening removes lost parts, sets unknown originals aside, and leaves the rest', async () => {
  const { folder, lost, young } = await untidyBook();
  const book = await openBook(folder);
  expect(existsSync(lost)).toBe(false);
  expect(existsSync(young)).toBe(true);
  expect(existsSync(originalPath(folder, orphan.file.hash))).toBe(false);
  const aside = join(folder, 'originals', 'set-aside');
  expect(readdirSync(aside)).toEqual([orphan.file.hash]);
  expect(new Uint8Array(readFileSync(join(aside, orphan.file.hash)))).toEqual(orphan.bytes);
  expect(new Uint8Array(await book.original(known.file.hash))).toEqual(known.bytes);
  await book.addFileWithPulls(orphan.file, orphan.bytes, []);
  expect(new Uint8Array(await book.original(orphan.file.hash))).toEqual(orphan.bytes);
  await book.close();
});

test('an original set aside is put back when its row has come, and not kept twice', async () => {
  const { folder } = await untidyBook();
  const path = originalPath(folder, known.file.hash);
  const aside = join(folder, 'originals', 'set-aside', known.file.hash);
  mkdirSync(dirname(aside), { recursive: true });
  for (const move of [renameSync, copyFileSync]) {
    move(path, aside);
    const book = await openBook(folder);
    expect(existsSync(aside)).toBe(false);
    expect(new Uint8Array(await book.original(known.file.hash))).toEqual(known.bytes);
    await book.close();
  }
});

test('nothing is swept while another program writes: its original may have no row yet', async () => {
  const { folder, lost } = await untidyBook();
  await otherProgramHolding(folder, 'begin immediate');
  const book = await openBook(folder);
  expect(existsSync(originalPath(folder, orphan.file.hash))).toBe(true);
  expect(existsSync(lost)).toBe(true);
  await book.close();
});
