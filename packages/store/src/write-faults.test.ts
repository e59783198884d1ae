import { execFileSync, spawnSync } from 'node:child_process';
import {
  chmodSync,
  cpSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { backUpBook } from './backup/backup-book.ts';
import { checkBackup } from './backup/check.ts';
import { backupsIn } from './backup/model.ts';
import { restoreBackup } from './backup/restore.ts';
import { Database } from './driver.ts';
import type { BookContents } from './model.ts';
import { openBook } from './open-book.ts';
import { databaseFile } from './places.ts';
import { rescueBook } from './rescue/rescue-book.ts';
import { type Act, NEW_FILE } from './testing/act-once.ts';
import { asProgram } from './testing/as-program.ts';
import { importedFile } from './testing/imported-file.ts';
import { temporaryFolder } from './testing/temporary-folder.ts';

const ACTS: readonly Act[] = ['import', 'amend', 'backup', 'merge', 'rescue'];
const LATER = new Date('2026-03-15T10:00:00.000Z');

/** A shop's book, one to be merged in, a backup from before; under one folder. */
interface Shop {
  book: string;
  laptop: string;
  backups: string;
  before: BookContents;
}

async function makeShop(parent: string): Promise<Shop> {
  const shop = {
    book: join(parent, 'book'),
    laptop: join(parent, 'laptop'),
    backups: join(parent, 'backups'),
  };
  const book = await openBook(shop.book, { create: { name: 'Shop' } });
  for (const name of ['file 0', 'file 1', 'file 2', 'file 3']) {
    const { file, bytes, pulls } = importedFile(name);
    await book.addFileWithPulls(file, bytes, pulls);
  }
  await backUpBook(shop.book, shop.backups, new Date('2026-03-01T10:00:00.000Z'));
  const before = await book.contents();
  await book.close();
  const laptop = await openBook(shop.laptop, { create: { name: 'Laptop' } });
  for (const name of ['track 0', 'track 1', 'track 2']) {
    const { file, bytes, pulls } = importedFile(name);
    await laptop.addFileWithPulls(file, bytes, pulls);
  }
  await laptop.close();
  return { ...shop, before };
}

/** Makes the book a damaged one that SQLite does not open; gives its bytes. */
function damage({ book }: Shop): Buffer {
  const bytes = readFileSync(databaseFile(book));
  bytes.fill(0x42, 0, 100);
  writeFileSync(databaseFile(book), bytes);
  return bytes;
}

const argumentsOf = (act: Act, { book, laptop, backups }: Shop): string[] => [
  ...asProgram('act-once'),
  act,
  book,
  act === 'backup' ? backups : laptop,
];

/** What the program printed last. */
const said = (printed: string): { code: string; message: string } =>
  JSON.parse(printed.trim().split('\n').at(-1)!);

/** What stands after an act that failed is what stood before; after one that did not, the act is there whole. */
async function expectNothingLost(act: Act, code: string, shop: Shop, damaged: Buffer | null): Promise<void> {
  if (damaged !== null && code !== 'none') {
    expect(readFileSync(databaseFile(shop.book)).equals(damaged)).toBe(true);
    // With room again, the rescue gives everything.
    await rescueBook(shop.book, () => null, LATER);
  }
  const book = await openBook(shop.book);
  const after = await book.contents();
  await book.close();
  const ids = new Set(shop.before.pulls.map(({ id }) => id));
  const kept = after.pulls.filter(({ id }) => ids.has(id));
  if (act === 'amend' && code === 'none') expect(kept[0]!.notes).toHaveLength(1);
  else expect(kept).toEqual(shop.before.pulls);
  const came = after.files.map(({ name }) => name).filter((name) => !/^file/.test(name));
  const wanted = {
    import: [NEW_FILE],
    merge: ['track 0', 'track 1', 'track 2'],
    amend: [],
    backup: [],
    rescue: [],
  };
  expect(came).toEqual(code === 'none' ? wanted[act] : []);
  const left = readdirSync(shop.book, { recursive: true, encoding: 'utf8' });
  expect(left.filter((name) => /\.part|new\.sqlite/.test(name))).toEqual([]);
  const backups = await backupsIn(shop.backups);
  expect(backups).toHaveLength(act === 'backup' && code === 'none' ? 2 : 1);
  for (const { madeAt } of backups) expect((await checkBackup(shop.backups, madeAt)).faults).toEqual([]);
  expect(readdirSync(shop.backups).filter((name) => name.includes('.part'))).toEqual([]);
  const laptop = new Database(databaseFile(shop.laptop), { readonly: true });
  expect(laptop.pragma('integrity_check', { simple: true })).toBe('ok');
  expect(laptop.prepare('select count(*) from file').pluck().get()).toBe(3);
  laptop.close();
}

const TOLD = /took no more .*Nothing already stored was touched\. Make room/;

describe.skipIf(process.platform === 'win32')('the disk takes no more in the middle of it', () => {
  // A limit of file size fails a write at any place, for any user. KiB; the last is room for all.
  test.each(ACTS.flatMap((act) => [64, 300, 1_000_000].map((limit) => [act, limit] as const)))(
    '%s, no file above %d KiB',
    async (act, limit) => {
      const shop = await makeShop(temporaryFolder());
      const damaged = act === 'rescue' ? damage(shop) : null;
      const run = `trap '' XFSZ; ulimit -f ${limit}; exec "$0" "$@"`;
      const printed = execFileSync('bash', ['-c', run, process.execPath, ...argumentsOf(act, shop)], {
        encoding: 'utf8',
      });
      const { code, message } = said(printed);
      if (limit === 1_000_000) expect([code, message]).toEqual(['none', '']);
      else if (code !== 'none') expect([code, message]).toEqual(['full', expect.stringMatching(TOLD)]);
      if (limit === 64) expect(code).toBe('full');
      await expectNothingLost(act, code, shop, damaged);
    },
  );

  test.for(ACTS.flatMap((act) => [40, 500].map((free) => [act, free] as const)))(
    '%s, %d KiB free on a real small disk',
    async ([act, free], context) => {
      const small = temporaryFolder();
      // Only root may mount a disk; the limit of file size above stands for it elsewhere.
      const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=64m', 'tmpfs', small]).status === 0;
      if (!mounted) context.skip('no right to mount a small disk');
      onTestFinished(() => void spawnSync('umount', [small]));
      const shop = await makeShop(small);
      const damaged = act === 'rescue' ? damage(shop) : null;
      const filler = join(small, 'filler');
      fillUpTo(small, filler, free);
      const printed = execFileSync(process.execPath, argumentsOf(act, shop), { encoding: 'utf8' });
      const { code, message } = said(printed);
      if (code !== 'none') expect([code, message]).toEqual(['full', expect.stringMatching(TOLD)]);
      if (free === 40) expect(code).toBe('full');
      rmSync(filler);
      await expectNothingLost(act, code, shop, damaged);
    },
  );
});

/** Leaves so many KiB free. */
function fillUpTo(disk: string, filler: string, free: number): void {
  const [line] = execFileSync('df', ['-k', '--output=avail', disk], { encoding: 'utf8' })
    .trim()
    .split('\n')
    .slice(-1);
  writeFileSync(filler, Buffer.alloc((Number(line) - free) * 1024));
}

describe.skipIf(process.platform === 'win32')('a folder that may not be written', () => {
  test.each(ACTS)('%s', async (act) => {
    const parent = temporaryFolder();
    const shop = await makeShop(parent);
    const damaged = act === 'rescue' ? damage(shop) : null;
    chmodSync(parent, 0o755);
    const closed = act === 'backup' ? shop.backups : shop.book;
    const open = act === 'backup' ? shop.book : shop.laptop;
    execFileSync('chmod', ['-R', 'a=rX', closed]);
    execFileSync('chmod', ['-R', 'a=rwX', open]);
    onTestFinished(() => void execFileSync('chmod', ['-R', 'u=rwX', parent]));
    // As another user where this one is root, who may write anywhere.
    const user = process.getuid?.() === 0 ? { uid: 65_534, gid: 65_534 } : {};
    const printed = execFileSync(process.execPath, argumentsOf(act, shop), { encoding: 'utf8', ...user });
    const { code, message } = said(printed);
    expect([code, message]).toEqual(['read-only', expect.stringContaining(closed)]);
    expect(message).toMatch(act === 'backup' ? /name another folder/ : /copy the book/);
    execFileSync('chmod', ['-R', 'u=rwX', parent]);
    await expectNothingLost(act, code, shop, damaged);
  });
});

test('from a disc that is only read: a book is merged in, a backup is restored, and can be written', async () => {
  const parent = temporaryFolder();
  const shop = await makeShop(parent);
  const disc = join(parent, 'disc');
  mkdirSync(disc);
  cpSync(shop.laptop, disc, { recursive: true });
  execFileSync('chmod', ['-R', 'a=rX', disc]);
  onTestFinished(() => void execFileSync('chmod', ['-R', 'u=rwX', parent]));
  execFileSync('chmod', ['-R', 'a=rwX', shop.book]);
  chmodSync(parent, 0o755);
  const user = process.getuid?.() === 0 ? { uid: 65_534, gid: 65_534 } : {};
  const printed = execFileSync(process.execPath, argumentsOf('merge', { ...shop, laptop: disc }), {
    encoding: 'utf8',
    ...user,
  });
  expect(said(printed)).toEqual({ code: 'none', message: '' });
  await expectNothingLost('merge', 'none', shop, null);

  execFileSync('chmod', ['-R', 'a=rX', shop.backups]);
  const { book } = await restoreBackup(shop.backups, join(parent, 'restored'), null);
  expect(await book.contents()).toEqual(shop.before);
  await book.close();
  expect(statSync(databaseFile(join(parent, 'restored'))).mode & 0o200).toBe(0o200);
});
