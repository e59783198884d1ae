import { createHash } from 'node:crypto';
import { mkdir, mkdtemp, readdir, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { withPartFolder } from './part-folder.ts';
import { putInPlace } from './put-in-place.ts';

let out = '';
beforeEach(async () => {
  out = await mkdtemp(join(tmpdir(), 'pullbook-place-'));
});
afterEach(() => rm(out, { recursive: true, force: true }));

const sha = (text: string): string => createHash('sha256').update(text).digest('hex');

async function place(name: string, text: string, known: string[] = []) {
  return withPartFolder(out, async (part) => {
    await writeFile(join(part, name), text);
    return putInPlace(join(part, name), out, new Set(known.map(sha)));
  });
}

test('a new file gets its name, and nothing else is left', async () => {
  const placed = await place('cam.png', 'first');
  expect(placed).toMatchObject({ path: join(out, 'cam.png'), bytes: 5, sha256: sha('first'), remarks: [] });
  expect(await readdir(out)).toEqual(['cam.png']);
});

test('what was published from this book gives way, and it is said', async () => {
  await place('cam.png', 'first');
  const placed = await place('cam.png', 'second', ['first']);
  expect(placed.remarks.map(({ code }) => code)).toEqual(['replaced']);
  expect(await readdir(out)).toEqual(['cam.png']);
  expect(await readFile(join(out, 'cam.png'), 'utf8')).toBe('second');
});

test('what somebody else made or mended under that name is kept under another', async () => {
  await writeFile(join(out, 'cam.png'), 'by hand');
  await writeFile(join(out, 'cam-other-1.png'), 'older');
  const placed = await place('cam.png', 'second', ['first']);
  expect(placed.remarks.map(({ code }) => code)).toEqual(['put-aside']);
  expect(await readFile(join(out, 'cam-other-2.png'), 'utf8')).toBe('by hand');
  expect(await readFile(join(out, 'cam-other-1.png'), 'utf8')).toBe('older');
  expect(await readFile(join(out, 'cam.png'), 'utf8')).toBe('second');
});

test('a link or a folder of that name is put aside and never written through', async () => {
  await writeFile(join(out, 'target.txt'), 'target');
  await symlink(join(out, 'target.txt'), join(out, 'cam.png'));
  await mkdir(join(out, 'cam.svg', 'deeper'), { recursive: true });
  await place('cam.png', 'second');
  await place('cam.svg', 'third');
  expect(await readFile(join(out, 'target.txt'), 'utf8')).toBe('target');
  expect((await readdir(out)).sort()).toEqual([
    'cam-other-1.png',
    'cam-other-1.svg',
    'cam.png',
    'cam.svg',
    'target.txt',
  ]);
});

test('a folder of numbered pictures is one thing: its bytes and hash are those of its files in their order', async () => {
  const placed = await withPartFolder(out, async (part) => {
    await mkdir(join(part, 'cam-pictures'));
    await writeFile(join(part, 'cam-pictures', '00002.png'), 'two');
    await writeFile(join(part, 'cam-pictures', '00001.png'), 'one');
    return putInPlace(join(part, 'cam-pictures'), out, new Set());
  });
  expect(placed).toMatchObject({ bytes: 6, sha256: sha('onetwo') });
});

test('several that put folders of one name there at once: one stands, whole', async () => {
  const texts = ['one', 'two', 'three', 'four'];
  const known = new Set(texts.map(sha));
  const placing = texts.map((text) =>
    withPartFolder(out, async (part) => {
      await mkdir(join(part, 'cam-pictures'));
      await writeFile(join(part, 'cam-pictures', '00001.png'), text);
      return putInPlace(join(part, 'cam-pictures'), out, known);
    }),
  );
  await Promise.all(placing);
  expect(await readdir(out)).toEqual(['cam-pictures']);
  expect(texts).toContain(await readFile(join(out, 'cam-pictures', '00001.png'), 'utf8'));
});

test('what a killed program left is swept; what another one is at stays', async () => {
  // No system gives a process this number.
  await mkdir(join(out, '.pullbook-part-99999999-1'));
  await mkdir(join(out, `.pullbook-part-${process.ppid}-1`));
  await place('cam.png', 'first');
  expect((await readdir(out)).sort()).toEqual([`.pullbook-part-${process.ppid}-1`, 'cam.png']);
});
