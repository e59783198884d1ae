import { cp, mkdir, mkdtemp, open, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { captured, capturedJson, stepTest } from './testing/captured.ts';

let folder = '';
const at = (name: string): string => join(folder, name);
const book = (name: string): string[] => ['--book', at(name)];

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-cli-safety-'));
  await writeFile(at('base.csv'), stepTest(1));
  await writeFile(at('cam.csv'), stepTest(1.04));
  const imported = await capturedJson(['import', at('base.csv'), at('cam.csv'), ...book('shop')]);
  expect(imported.code).toBe(0);
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const pullsOf = async (name: string) => (await capturedJson(['list', 'pulls', ...book(name)])).json.pulls;

/** Names and lengths of all files under a folder: what a command that was refused must leave as it is. */
async function listing(path: string): Promise<string[]> {
  const entries = await readdir(path, { recursive: true, withFileTypes: true });
  const files = entries.filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name));
  return Promise.all(files.sort().map(async (file) => `${file} ${(await stat(file)).size}`));
}

async function refused(argv: string[]): Promise<{ code: string; message: string }> {
  const { code, json } = await capturedJson(argv);
  expect(code).toBe(1);
  return json.error;
}

describe('backup', () => {
  test('made, looked through, restored: the same pulls; told as lines and as JSON', async () => {
    const made = await capturedJson(['backup', '--to', at('backups'), ...book('shop')]);
    expect(made).toMatchObject({
      code: 0,
      json: { schemaVersion: 1, folder: at('backups'), pulls: 2, files: 2, missingOriginals: [] },
    });
    const checked = await capturedJson(['backup', 'check', at('backups')]);
    expect(checked).toMatchObject({ code: 0, json: { madeAt: made.json.madeAt, pulls: 2, faults: [] } });
    expect((await captured(['backup', 'check', at('backups')])).out).toContain('All of it is whole.');
    const restored = await capturedJson(['restore', at('backups'), ...book('from backup')]);
    expect(restored).toMatchObject({
      code: 0,
      json: { from: 'backup', madeAt: made.json.madeAt, pulls: 2, missingOriginals: [] },
    });
    expect(await pullsOf('from backup')).toEqual(await pullsOf('shop'));
    const original = ['--json', ...book('from backup')];
    expect((await captured(['list', 'files', ...original])).out).toContain('base.csv');
  });

  test('what is not whole is told, with another exit code', async () => {
    await capturedJson(['backup', '--to', at('altered'), ...book('shop')]);
    const originals = await listing(join(at('altered'), 'originals'));
    const [one] = originals[0]!.split(/ \d+$/);
    await writeFile(one!, 'other bytes');
    const { code, json } = await capturedJson(['backup', 'check', at('altered')]);
    expect(code).toBe(1);
    expect(json.faults).toEqual([expect.stringContaining('is not there whole')]);
    expect((await captured(['backup', 'check', at('altered')])).out).toContain('not whole: ');
  });

  test('refused in words: no folder set, the folder of a book, the backups of another, no backup there', async () => {
    expect((await refused(['backup', ...book('shop')])).code).toBe('no-backup-folder');
    expect((await refused(['backup', '--to', at('shop'), ...book('shop')])).message).toContain(
      'name another folder',
    );
    expect((await refused(['backup', '--to', at('x'), ...book('nowhere')])).message).toContain(at('nowhere'));
    await capturedJson(['import', at('base.csv'), ...book('second')]);
    await capturedJson(['backup', '--to', at('of shop'), ...book('shop')]);
    const before = await listing(at('of shop'));
    const foreign = await refused(['backup', '--to', at('of shop'), ...book('second')]);
    expect(foreign.message).toContain('another book');
    expect(await listing(at('of shop'))).toEqual(before);
    await mkdir(at('nothing'));
    expect((await refused(['backup', 'check', at('nothing')])).message).toContain('there is none');
    const wrongTime = await refused(['backup', 'check', at('of shop'), '--at', '1999']);
    expect(wrongTime.message).toMatch(/No backup of 1999.*there are 20/);
    const file = await refused(['backup', '--to', at('base.csv'), ...book('shop')]);
    expect(file.message).toContain('base.csv');
    expect(await readFile(at('base.csv'), 'utf8')).toBe(stepTest(1));
  });
});

describe('export and restore', () => {
  test('for everyone: what is the shop’s own is left out and counted, and it reads back', async () => {
    await cp(at('shop'), at('private'), { recursive: true });
    const [closed, free] = await pullsOf('private');
    const hidden = ['audience', closed.id, '--who', 'shop', ...book('private')];
    expect((await capturedJson(hidden)).code).toBe(0);
    const all = await capturedJson(['export', '--to', at('all'), ...book('private')]);
    expect(all.json).toMatchObject({ reader: 'shop', pulls: 2, privateThings: 1 });
    const some = await capturedJson(['export', '--to', at('some'), '--for', 'everyone', ...book('private')]);
    expect(some).toMatchObject({
      code: 0,
      json: { reader: 'everyone', pulls: 1, privateThings: 0, leftOut: { pulls: 1, files: 1 } },
    });
    expect(await readFile(join(at('some'), 'book.json'), 'utf8')).not.toContain(closed.id);
    const said = await captured(['export', '--to', at('said'), '--for', 'customer', ...book('private')]);
    expect(said.out).toContain('Left out: 1 pull');
    const back = await capturedJson(['restore', at('some'), ...book('public')]);
    expect(back).toMatchObject({ code: 0, json: { from: 'export', madeAt: null, pulls: 1 } });
    expect((await pullsOf('public')).map(({ id }: { id: string }) => id)).toEqual([free.id]);
  });

  test('refused: a folder that holds something else, a folder that is taken, no export, a reader nobody knows', async () => {
    await mkdir(at('papers'));
    await writeFile(join(at('papers'), 'letter.txt'), 'mine');
    for (const more of [[], ['--replace']]) {
      const error = await refused(['export', '--to', at('papers'), ...more, ...book('shop')]);
      expect(error.code).toBe('folder-not-empty');
    }
    expect(await readdir(at('papers'))).toEqual(['letter.txt']);
    expect((await refused(['restore', at('all'), ...book('shop')])).code).toBe('folder-not-empty');
    expect((await refused(['restore', at('not there'), ...book('new')])).code).toBe('no-export');
    expect((await refused(['restore', at('papers'), ...book('new')])).message).toContain('book.json');
    await expect(stat(at('new'))).rejects.toMatchObject({ code: 'ENOENT' });
    const reader = await captured(['export', '--to', at('y'), '--for', 'nobody', ...book('shop')]);
    expect(reader.code).not.toBe(0);
    expect(reader.err).toContain('shop, customer, everyone');
  });
});

describe('merge', () => {
  test('a dry run says what would come and writes nothing; then it comes, once', async () => {
    await writeFile(at('track.csv'), stepTest(0.9));
    await capturedJson(['import', at('track.csv'), ...book('laptop')]);
    await cp(at('shop'), at('merged'), { recursive: true });
    const before = await pullsOf('merged');
    const dry = await capturedJson(['merge', at('laptop'), '--dry-run', ...book('merged')]);
    expect(dry).toMatchObject({
      code: 0,
      json: { schemaVersion: 1, dryRun: true, added: { pull: 1, file: 1 } },
    });
    expect((await captured(['merge', at('laptop'), '--dry-run', ...book('merged')])).out).toContain(
      'Would come in from',
    );
    expect(await pullsOf('merged')).toEqual(before);
    const real = await capturedJson(['merge', at('laptop'), ...book('merged')]);
    expect(real).toMatchObject({
      code: 0,
      json: { ...dry.json, dryRun: false, remarks: [], conflicts: [], missingOriginals: [] },
    });
    const [laptopPull] = await pullsOf('laptop');
    const after = await pullsOf('merged');
    expect(after).toHaveLength(3);
    expect(after.map(({ id }: { id: string }) => id)).toContain(laptopPull.id);
    const again = await captured(['merge', at('laptop'), ...book('merged')]);
    expect(again.out).toContain('nothing new');
    expect(await pullsOf('merged')).toEqual(after);
  });

  test('refused: a book into itself, by another way of writing it too; no book; an export', async () => {
    for (const same of [at('shop'), join(folder, 'laptop', '..', 'shop'), `${at('shop')}/`]) {
      const error = await refused(['merge', same, ...book('shop')]);
      expect(error.message).toContain('is the book itself');
    }
    await capturedJson(['export', '--to', at('whole'), ...book('shop')]);
    for (const none of ['papers', 'not there', 'whole']) {
      const error = await refused(['merge', at(none), ...book('shop')]);
      expect(error.message).toMatch(/There is no book in .*restore/);
    }
    expect(await pullsOf('shop')).toHaveLength(2);
    expect((await readdir(at('shop'))).filter((name) => name.endsWith('.part'))).toEqual([]);
  });
});

describe('rescue', () => {
  test('of a sound book: nothing; of a damaged one: all that can be read, what is lost is told, then it is sound', async () => {
    const sound = await capturedJson(['rescue', ...book('shop')]);
    expect(sound).toMatchObject({ code: 0, json: { damage: null, report: null } });
    await cp(at('shop'), at('damaged'), { recursive: true });
    const before = await pullsOf('damaged');
    const file = await open(join(at('damaged'), 'book.sqlite'), 'r+');
    await file.write(Buffer.alloc(4096, 0x42), 0, 4096, 0);
    await file.close();
    const listed = await refused(['list', 'pulls', ...book('damaged')]);
    expect(listed.message).toContain('pullbook rescue --book');
    expect((await refused(['merge', at('damaged'), ...book('shop')])).message).toContain(
      `pullbook rescue --book ${at('damaged')}`,
    );
    const { code, json } = await capturedJson(['rescue', ...book('damaged')]);
    expect(code).toBe(0);
    expect(json.damage).toEqual(expect.any(String));
    expect(json.report).toMatchObject({ kept: { pulls: 2, files: 2 }, lost: [] });
    expect((await readdir(at('damaged'))).filter((name) => name.startsWith('damaged-'))).toHaveLength(1);
    expect(await pullsOf('damaged')).toEqual(before);
    expect((await captured(['rescue', ...book('damaged')])).out).toContain('The book is sound');
  });

  test('where there is no book it is said, and none is made', async () => {
    const error = await refused(['rescue', ...book('not there')]);
    expect(error.message).toContain(at('not there'));
    await expect(stat(at('not there'))).rejects.toMatchObject({ code: 'ENOENT' });
  });
});
