import { cp, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Publication } from '@pullbook/core/publication';
import { exportFiles, type OneTrial, ofTrial, type Reader } from '@pullbook/formats';
import { type Book, openBook } from '@pullbook/store';
import { unzipSync, zipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest';
import { addCombinationFromText } from './combinations.ts';
import { importFile } from './import-file.ts';
import { lookAtBundleFile } from './look-at-bundle.ts';
import { openBundle, openBundleFile } from './open-bundle.ts';
import { startTrial } from './start-trial.ts';
import { sheetText, stepTestFile } from './testing/temporary-book.ts';

const DAY = '2026-03-15';
const PUBLISHED: Omit<Publication, 'trialId'> = {
  id: 'published',
  question: 'Which cam?',
  sentence: 'Long makes 2 % more.',
  kinds: ['report'],
  files: [],
  pullIds: [],
  correction: 'observed',
  figures: [],
  privateToo: false,
  links: [],
  at: '2026-03-14T10:42:00Z',
};
let parent = '';
let shop: Book;
let trialId = '';
beforeAll(async () => {
  parent = await mkdtemp(join(tmpdir(), 'pullbook-bundle-'));
  shop = await openBook(join(parent, 'shop'), { create: { name: 'Shop' } });
  for (const [index, name] of ['Short', 'Long', 'Longest'].entries()) {
    await addCombinationFromText(shop, { sheetText: sheetText(name), engineName: 'Six' });
    const { id: combinationId } = (await shop.combinations()).find((one) => one.name === name)!;
    for (const repeat of [0, 1]) {
      const bytes = stepTestFile(1 + index / 50 + repeat / 500);
      // One that was aborted goes into a trial as rejected, and with it into the bundle.
      const outcome = repeat === 1 && name === 'Long' ? 'aborted' : 'completed';
      await importFile(shop, { name: `${name} ${repeat}.csv`, bytes, details: { combinationId, outcome } });
    }
  }
  const started = await startTrial(shop, {
    question: 'Which cam?',
    kind: 'comparison',
    combinations: ['Short', 'Long'].map((name) => ({ combinationId: name, shortName: name })),
    correction: 'observed',
  });
  if (!started.ok) throw new Error(started.remarks[0]!.message);
  trialId = started.value.id;
  await shop.addPublication({ ...PUBLISHED, trialId });
  await shop.changeSettings({ shopName: 'Shop' });
});
afterAll(async () => {
  await shop.close();
  await rm(parent, { recursive: true, force: true });
});

async function emptyBook(name: string): Promise<Book> {
  const book = await openBook(join(parent, name), { create: { name } });
  onTestFinished(() => book.close());
  return book;
}

async function chosen(book: Book, reader: Reader = 'everyone'): Promise<OneTrial> {
  const found = ofTrial(await book.outline(), trialId, reader, DAY);
  if (!found.ok) throw new Error(found.remarks[0]!.message);
  return found.value;
}

async function bundleOf(book: Book, reader: Reader = 'everyone'): Promise<Uint8Array> {
  const { contents, question } = await chosen(book, reader);
  const files: Record<string, Uint8Array> = {};
  const source = {
    channelsOf: (id: string) => book.channels(id),
    originalOf: (hash: string) => book.original(hash),
  };
  for await (const { path, bytes } of exportFiles(contents, source, question)) files[path] = bytes;
  return zipSync(files);
}

/** What of a book a trial rests on, without what tells in which book it is. */
async function trialIn(book: Book) {
  const { contents } = await chosen(book, 'shop');
  const { info: _, log: __, ...rest } = contents;
  const pulls = await book.pulls(contents.pulls.map(({ id }) => id));
  const hashes = contents.files.map(({ hash }) => hash);
  return { ...rest, pulls, originals: await Promise.all(hashes.map((hash) => book.original(hash))) };
}

const left = async (book: Book) => (await readdir(book.folder)).filter((name) => name.endsWith('.part'));

test('a bundle is one trial with all it rests on, and another book opens it as that trial; once more changes nothing', async () => {
  const bytes = await bundleOf(shop);
  const readme = new TextDecoder().decode(unzipSync(bytes)['README.txt']);
  const trial = (await shop.trial(trialId))!;
  expect(readme).toContain(trial.question);
  const book = await emptyBook('new');
  const file = join(parent, 'bundle.zip');
  await writeFile(file, bytes);
  const combinations = [{ name: 'Short' }, { name: 'Long' }];
  const asKnown = (isKnown: boolean) => ({
    ok: true,
    value: {
      trials: [{ id: trialId, question: trial.question, isKnown }],
      combinations: combinations.map((one) => ({ ...one, isKnown })),
      pulls: trial.pulls.map(() => ({ isKnown })),
      invented: false,
    },
  });
  expect(await lookAtBundleFile(book, file)).toMatchObject(asKnown(false));
  expect(await book.trials()).toEqual([]);
  const opened = await openBundle(book, bytes);
  expect(opened).toMatchObject({
    ok: true,
    value: { trialId, question: trial.question, pulls: trial.pulls.length, isNew: true },
  });
  const came = await trialIn(book);
  expect(came).toEqual(await trialIn(shop));
  expect(came).toMatchObject({
    publications: [PUBLISHED],
    combinations: { length: 2 },
    files: { length: 4 },
  });
  expect(came.trials[0]!.pulls.filter(({ role }) => role === 'rejected')).toHaveLength(1);
  expect((await book.trials()).map(({ id }) => id)).toEqual([trialId]);
  expect(await book.settings()).toEqual({});
  const before = await book.contents();
  expect(await lookAtBundleFile(book, file)).toMatchObject(asKnown(true));
  expect(await openBundle(book, bytes)).toMatchObject({ ok: true, value: { isNew: false } });
  expect(await book.contents()).toEqual(before);
  expect(await left(book)).toEqual([]);
  // What came can be taken back: the trial first, since the rest is used by it.
  const added = (await book.log()).find(({ subject }) => subject === `trial ${trialId}`)!;
  await book.undo(added.uid);
  expect(await book.trials()).toEqual([]);
});

test('opened in the book it came from it changes nothing, though that has been worked on since', async () => {
  await cp(join(parent, 'shop'), join(parent, 'copy'), { recursive: true });
  const copy = await openBook(join(parent, 'copy'));
  onTestFinished(() => copy.close());
  const bytes = await bundleOf(copy);
  const trial = (await copy.trial(trialId))!;
  await copy.changeTrial({ ...trial, remark: 'looked at again' }, 'a thought');
  await copy.amendPull(trial.pulls[0]!.pullId, { operator: 'somebody else' }, 'written down wrongly');
  const before = await copy.contents();
  expect(await openBundle(copy, bytes)).toMatchObject({ ok: true, remarks: [] });
  expect(await copy.contents()).toEqual(before);
});

test('a pull that was read here from the same bytes is not doubled: the trial that comes uses ours', async () => {
  const book = await emptyBook('has the file');
  await importFile(book, { name: 'from the stick.csv', bytes: stepTestFile(1) });
  const [ours] = await book.pullHeads();
  const opened = await openBundle(book, await bundleOf(shop));
  expect(opened).toMatchObject({ ok: true, value: { report: { samePulls: [{ ours: ours!.id }] } } });
  const trial = (await book.trial(trialId))!;
  expect(await book.pullHeads()).toHaveLength(trial.pulls.length);
  expect(trial.pulls.map(({ pullId }) => pullId)).toContain(ours!.id);
  expect(await book.files()).toHaveLength(4);
});

test('a later bundle of a trial that is here already is told where it differs, and ours stays', async () => {
  await cp(join(parent, 'shop'), join(parent, 'later'), { recursive: true });
  const later = await openBook(join(parent, 'later'));
  onTestFinished(() => later.close());
  const book = await emptyBook('receives');
  await openBundle(book, await bundleOf(later));
  const trial = (await later.trial(trialId))!;
  await later.changeTrial({ ...trial, remark: 'with another thought' }, 'a thought');
  const again = await openBundle(book, await bundleOf(later));
  expect(again).toMatchObject({
    ok: true,
    value: { isNew: false, report: { conflicts: [{ kind: 'trial', fields: [{ field: 'remark' }] }] } },
    remarks: [{ code: 'merge-conflict' }],
  });
  expect((await book.trial(trialId))!.remark).toBe(trial.remark);
  // Said once; said again when it says another thing.
  expect(await openBundle(book, await bundleOf(later))).toMatchObject({
    value: { report: { conflicts: [] } },
  });
  await later.changeTrial({ ...trial, remark: 'and a third' }, 'a thought');
  expect(await openBundle(book, await bundleOf(later))).toMatchObject({
    remarks: [{ code: 'merge-conflict' }],
  });
});

describe('what is private', () => {
  test('keeps the trial in the shop unless it is asked for; the rest of its file stays then too', async () => {
    await cp(join(parent, 'shop'), join(parent, 'private'), { recursive: true });
    const book = await openBook(join(parent, 'private'));
    onTestFinished(() => book.close());
    const trial = (await book.trial(trialId))!;
    const named = new Set(trial.pulls.map(({ pullId }) => pullId));
    await book.amendPull(trial.pulls[0]!.pullId, { audience: { who: 'customer', notBefore: null } }, '');
    const outline = await book.outline();
    expect(ofTrial(outline, trialId, 'everyone', DAY)).toMatchObject({
      ok: false,
      remarks: [{ code: 'not-for-everyone' }],
    });
    expect(ofTrial(outline, trialId, 'customer', DAY).ok).toBe(true);
    const asked = await chosen(book, 'shop');
    expect(asked.contents.pulls).toHaveLength(trial.pulls.length);
    expect(asked.originalsLeftOut).toEqual([]);
    expect(ofTrial(outline, 'nothing', 'shop', DAY)).toMatchObject({ remarks: [{ code: 'no-trial' }] });

    // A pull of another trial, read from the same file, that is the shop's alone.
    const { hash } = asked.contents.files[0]!;
    const secret = {
      ...outline.pulls.find(({ id }) => named.has(id))!,
      id: 'secret',
      fileHash: hash,
      audience: { who: 'shop' as const, notBefore: null },
    };
    const withSecret = ofTrial({ ...outline, pulls: [...outline.pulls, secret] }, trialId, 'shop', DAY);
    expect(withSecret).toMatchObject({
      ok: true,
      value: { originalsLeftOut: [asked.contents.files[0]!.name] },
    });
    if (!withSecret.ok) return;
    const { pulls, files } = withSecret.value.contents;
    expect(files.some((one) => one.hash === hash)).toBe(false);
    expect(pulls.some((one) => one.fileHash === hash || one.id === 'secret')).toBe(false);
  });
});

describe('a bundle that is none is refused by name, and nothing is written', () => {
  const spoiled: [name: string, spoil: (files: Record<string, Uint8Array>) => unknown, said: RegExp][] = [
    ['without book.json', (files) => void delete files['book.json'], /no book\.json/],
    [
      'with half a book.json',
      (files) => Object.assign(files, { 'book.json': files['book.json']!.slice(0, 900) }),
      /book\.json/,
    ],
    ['without a curve', (files) => void delete files[pathIn(files, /^pulls\/.*\.csv$/)], /pulls\/.*\.csv/],
    ['without an original', (files) => void delete files[pathIn(files, /^originals\//)], /originals\//],
    [
      'with other bytes in an original',
      (files) => files[pathIn(files, /^originals\//)]!.fill(0x20, 0, 3),
      /does not hold together/,
    ],
    ['of another version', (files) => changeBook(files, (json) => (json.schemaVersion = 99)), /version 99/],
    [
      'with a pull that is not there',
      (files) => changeBook(files, (json) => json.pulls.pop()),
      /does not hold/,
    ],
    [
      'with nothing where a trial should be',
      (files) => changeBook(files, (json) => json.trials.fill(null)),
      /./,
    ],
    [
      'with a trial without combinations',
      (files) => changeBook(files, (json) => (json.trials[0].combinations = [])),
      /does not hold together/,
    ],
    [
      'with a running order of another shape',
      (files) => changeBook(files, (json) => (json.trials[0].runningOrder = { steps: 5, speed: 'x' })),
      /does not hold together/,
    ],
    [
      'with a publication of another shape',
      (files) => changeBook(files, (json) => json.publications.push({ ...ODD_PUBLICATION, trialId })),
      /does not hold together/,
    ],
    [
      'with a publication without its links',
      (files) =>
        changeBook(files, (json) => json.publications.push({ ...ODD_PUBLICATION, trialId, links: 3 })),
      /no list of links/,
    ],
    ['of a whole book', (files) => changeBook(files, (json) => json.trials.push(json.trials[0])), /2 trials/],
  ];
  test.each(spoiled)('%s', async (name, spoil, said) => {
    const files = unzipSync(await bundleOf(shop));
    spoil(files);
    const book = await emptyBook(`spoiled ${name}`);
    const before = await book.contents();
    const opened = await openBundle(book, zipSync(files));
    expect(opened.ok).toBe(false);
    expect(opened.remarks[0]!.message).toMatch(said);
    expect(await book.contents()).toEqual(before);
    expect(await left(book)).toEqual([]);
  });

  test('no file, and a file that is no archive', async () => {
    const book = await emptyBook('no file');
    expect(await openBundleFile(book, join(parent, 'nowhere.zip'))).toMatchObject({
      remarks: [{ code: 'no-bundle' }],
    });
    await writeFile(join(parent, 'text.zip'), 'no archive');
    expect(await openBundleFile(book, join(parent, 'text.zip'))).toMatchObject({
      remarks: [{ code: 'zip-damaged' }],
    });
  });

  test('packed once more inside a folder it opens all the same', async () => {
    const files = unzipSync(await bundleOf(shop));
    const inside = Object.fromEntries(
      Object.entries(files).map(([path, bytes]) => [`my trial/${path}`, bytes]),
    );
    const book = await emptyBook('inside');
    expect(await openBundle(book, zipSync(inside))).toMatchObject({ ok: true, value: { isNew: true } });
  });
});

const ODD_PUBLICATION = {
  id: 'odd',
  question: '?',
  sentence: '',
  kinds: ['still'],
  files: [],
  pullIds: [],
  correction: 'observed',
  figures: [{ id: 'peakPower', key: 'A', kind: 'loudness', value: 1, low: null, high: null, unit: 'W' }],
  privateToo: false,
  links: [],
  at: '2026-05-01T10:00:00Z',
};

const pathIn = (files: Record<string, Uint8Array>, pattern: RegExp): string =>
  Object.keys(files).find((path) => pattern.test(path))!;

// biome-ignore lint/suspicious/noExplicitAny: any content of a foreign file
function changeBook(files: Record<string, Uint8Array>, change: (json: any) => void): void {
  const json = JSON.parse(new TextDecoder().decode(files['book.json']));
  change(json);
  files['book.json'] = new TextEncoder().encode(JSON.stringify(json));
}
