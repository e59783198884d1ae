import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { appendFile, mkdtemp, open, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { importFile } from '../import-file.ts';
import { stepTestFile, temporaryBook } from '../testing/temporary-book.ts';
import { readSource } from './read-source.ts';

let folder = '';
let made: Awaited<ReturnType<typeof temporaryBook>>;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-source-'));
  made = await temporaryBook();
});
afterAll(async () => {
  await made.remove();
  await rm(folder, { recursive: true, force: true });
});

const silent = { progress: () => undefined };

/** A file of three pieces and a bit. */
async function longFile(name: string): Promise<{ path: string; bytes: Uint8Array }> {
  const rows = Array.from({ length: 200_000 }, (_, row) => `${1500 + row / 50},${300 + (row % 7)},0.82\n`);
  const bytes = new TextEncoder().encode(`rpm,Nm,lambda\n${rows.join('')}`);
  const path = join(folder, name);
  await writeFile(path, bytes);
  return { path, bytes };
}

test('a file on the disk reads as its bytes do, with their hash, and says how far it is', async () => {
  const { path, bytes } = await longFile('long.csv');
  const shares: number[] = [];
  const read = await readSource({ name: 'long.csv', path }, { progress: (share) => shares.push(share) });
  const inMemory = await readSource({ name: 'long.csv', bytes }, silent);
  if (!read.reading.ok || !inMemory.reading.ok) throw new Error('refused');
  const [columns, others] = [read.reading.value.columns, inMemory.reading.value.columns];
  const sums = (list: typeof columns) =>
    list.map(({ values }) => createHash('sha256').update(new Uint8Array(values.buffer)).digest('hex'));
  expect(sums(columns)).toEqual(sums(others));
  expect(read.hash).toBe(createHash('sha256').update(bytes).digest('hex'));
  expect(shares.length).toBeGreaterThan(2);
  expect(shares).toEqual([...shares].sort((a, b) => a - b));
  expect(shares.at(-1)).toBe(1);
});

test('a file that grows while it is read is refused by name', async () => {
  const { path } = await longFile('growing.csv');
  let grown: Promise<void> | null = null;
  const read = await readSource(
    { name: 'growing.csv', path },
    {
      progress: () => {
        grown ??= appendFile(path, '2000,300,0.82\n');
      },
    },
  );
  await grown;
  expect(read).toMatchObject({
    hash: null,
    reading: { ok: false, remarks: [{ code: 'file-changed', line: 1 }] },
  });
});

test('a file that changes between reading and keeping is refused, and nothing of it is stored', async () => {
  const path = join(folder, 'late.csv');
  await writeFile(path, stepTestFile());
  const book = {
    ...made.book,
    addFileWithPulls: async (...all: Parameters<typeof made.book.addFileWithPulls>) => {
      await appendFile(path, '9000,1,1\n');
      return made.book.addFileWithPulls(...all);
    },
  };
  const result = await importFile(book, { name: 'late.csv', path });
  expect(result).toMatchObject({ ok: false, remarks: [{ code: 'file-changed' }] });
  expect(await made.book.pullHeads()).toEqual([]);
  expect(await made.book.files()).toEqual([]);
});

test('from a path the book keeps the bytes that were read', async () => {
  const path = join(folder, 'kept.csv');
  await writeFile(path, stepTestFile());
  const result = await importFile(made.book, { name: 'kept.csv', path });
  expect(result.ok).toBe(true);
  const [file] = await made.book.files();
  expect(new Uint8Array(await made.book.original(file!.hash))).toEqual(new Uint8Array(stepTestFile()));
});

test('a file of 2.1 GB is refused by its length, unread', async () => {
  const path = join(folder, 'huge.csv');
  const file = await open(path, 'w');
  await file.write('rpm,Nm\n2000,300\n');
  await file.truncate(2.1e9);
  await file.close();
  const told: number[] = [];
  const read = await readSource({ name: 'huge.csv', path }, { progress: (share) => told.push(share) });
  expect(read).toMatchObject({
    hash: null,
    reading: { ok: false, remarks: [{ code: 'file-too-large', line: 1 }] },
  });
  expect(told).toEqual([]);
});

test('a pipe is refused instead of waited for', async () => {
  const path = join(folder, 'pipe.csv');
  execFileSync('mkfifo', [path]);
  const read = await readSource({ name: 'pipe.csv', path }, silent);
  expect(read.hash).toBeNull();
  expect(read.reading).toMatchObject({ ok: false, remarks: [{ code: 'not-a-file', level: 'refusal' }] });
});
