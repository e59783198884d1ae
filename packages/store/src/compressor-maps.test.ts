import { readSheet } from '@pullbook/core/combination';
import type { Prediction } from '@pullbook/core/shop';
import { expect, onTestFinished, test } from 'vitest';
import { backUpBook } from './backup/backup-book.ts';
import { restoreBackup } from './backup/restore.ts';
import { Database } from './driver.ts';
import { mergeBooks } from './merge/merge-books.ts';
import type { Book } from './model.ts';
import { openBook } from './open-book.ts';
import { databaseFile } from './places.ts';
import { rescueBook } from './rescue/rescue-book.ts';
import { restoreContents } from './restore-contents.ts';
import { temporaryFolder } from './testing/temporary-folder.ts';
import { combination, compressorMap, engine, prediction, trial } from './testing/things.ts';

const GO = { dryRun: false };
const NOW = new Date('2026-03-14T10:00:00.000Z');

async function newBook(name = 'Shop', folder = temporaryFolder()): Promise<Book> {
  const book = await openBook(folder, { create: { name } });
  onTestFinished(() => book.close());
  return book;
}

/** A combination whose sheet names a map. */
function naming(id: string, map: string) {
  const plain = { schemaVersion: 1, name: id, shortBlock: { bore: '96 mm' }, supercharger: { map } };
  const read = readSheet(plain);
  if (!read.ok) throw new Error(read.remarks[0]!.message);
  return { ...combination(id), packageIds: [], sheet: read.value };
}

const mapNamedBy = ({ sheet }: ReturnType<typeof naming>) => sheet.sections.supercharger!.map!.text;

test('a map is kept as given, changed with both sides in the log, and each is undone', async () => {
  const book = await newBook();
  const first = compressorMap('m');
  await book.addCompressorMap(first);
  expect(await book.compressorMap('m')).toEqual(first);
  const better = {
    ...first,
    points: [...first.points, { flow: 0.1, pressureRatio: 1.42, speedRpm: 40_000, efficiency: 0.7 }],
  };
  await book.changeCompressorMap(better, 'a point read off again');
  expect(await book.compressorMaps()).toEqual([better]);
  expect((await book.log()).at(-1)).toMatchObject({
    act: 'compressorMap changed',
    subject: 'compressorMap m',
    reason: 'a point read off again',
    before: first,
    after: better,
  });
  await book.undo(null);
  expect(await book.compressorMap('m')).toEqual(first);
  await book.undo(null);
  expect(await book.compressorMaps()).toEqual([]);
  expect(await book.compressorMap('m')).toBeNull();
  // Hidden, never deleted, and it can be had back.
  expect((await book.contents()).compressorMaps).toEqual([first]);
  const undone = (await book.log()).at(-1)!;
  await book.undo(undone.uid);
  expect(await book.compressorMap('m')).toEqual(first);
});

test('a change on an older state is refused and says what came since; one that is not there is a broken assumption', async () => {
  const book = await newBook();
  await book.addCompressorMap(compressorMap('m'));
  const stamp = await book.stamp('compressorMap m');
  await book.changeCompressorMap(compressorMap('m', { notes: 'theirs' }), 'theirs');
  await expect(
    book.changeCompressorMap(compressorMap('m', { notes: 'mine' }), 'mine', stamp),
  ).rejects.toMatchObject({
    code: 'changed meanwhile',
    since: [{ reason: 'theirs' }],
  });
  expect((await book.compressorMap('m'))!.notes).toBe('theirs');
  await expect(book.changeCompressorMap(compressorMap('other'), '')).rejects.toThrow(
    'no compressorMap other',
  );
});

test('a map is meant by its name or id, and the history knows what it is called', async () => {
  const book = await newBook();
  await book.addCompressorMap(compressorMap('abcd-1', { name: 'Shop blower no. 2' }));
  expect(await book.named('compressorMap', 'shop BLOWER no. 2')).toEqual([
    { id: 'abcd-1', name: 'Shop blower no. 2' },
  ]);
  expect(await book.named('compressorMap', 'abcd')).toHaveLength(1);
  const subjects = await book.subjects(['compressorMap abcd-1']);
  expect(subjects.get('compressorMap abcd-1')).toEqual({ name: 'Shop blower no. 2', isThere: true });
});

const CURVE: NonNullable<Prediction['curve']> = {
  engineSpeedRpm: [3000, 4500, 6000],
  power: { value: [1e5, 1.7e5, 2.2e5], low: [0.9e5, 1.6e5, 2e5], high: [1.1e5, 1.8e5, 2.4e5] },
  boost: { value: [1e4, 3e4, 5e4], low: [8e3, 2.5e4, 4.5e4], high: [1.2e4, 3.5e4, 5.5e4] },
  air: { pressure: 98_000, temperature: 295 },
};

const predicted = (id: string, more: Partial<Prediction> = {}): Prediction => ({
  ...prediction(id, 't'),
  what: 'highestBoost',
  value: 5e4,
  low: 4.5e4,
  high: 5.5e4,
  curve: CURVE,
  madeBy: { version: '0.1.0', seed: 4_000_000_000 },
  ...more,
});

async function bookWithPredictions(folder?: string): Promise<Book> {
  const book = await newBook('Shop', folder);
  await book.addEngine(engine);
  await book.addTrial(trial('t'));
  await book.addPrediction(predicted('curve'));
  await book.addPrediction(predicted('no boost', { what: 'peakPower', curve: { ...CURVE, boost: null } }));
  await book.addPrediction(prediction('guess', 't'));
  await book.addCompressorMap(compressorMap('m'));
  return book;
}

test("a prediction is kept with its curve and what made it; a person's word has neither", async () => {
  const book = await bookWithPredictions();
  const [guess, noBoost, curve] = await book.predictions(['t']);
  expect(curve).toEqual(predicted('curve'));
  expect(noBoost!.curve!.boost).toBeNull();
  expect(Object.keys(guess!)).not.toContain('curve');
  expect(Object.keys(guess!)).not.toContain('madeBy');
});

test('neither curve nor figure of a prediction is ever altered, by SQL either', async () => {
  const book = await bookWithPredictions();
  const database = new Database(databaseFile(book.folder));
  onTestFinished(() => void database.close());
  for (const set of ["curve = 'null'", "madeBy = 'null'", 'value = 1'])
    expect(() => database.exec(`update prediction set ${set}`)).toThrow('a prediction is never altered');
  expect(() => database.exec('delete from prediction')).toThrow('a prediction is never altered');
});

test('a curve with what is no number, or of two lengths, is a broken assumption and nothing is kept', async () => {
  const book = await bookWithPredictions();
  const before = await book.predictions();
  const holed = { ...CURVE, power: { ...CURVE.power, low: [1, Number.NaN, 3] } };
  await expect(book.addPrediction(predicted('holed', { curve: holed }))).rejects.toThrow('no number');
  const short = { ...CURVE, power: { ...CURVE.power, low: [1] } };
  await expect(book.addPrediction(predicted('short', { curve: short }))).rejects.toThrow('another length');
  expect(await book.predictions()).toEqual(before);
});

test('maps and curves are the same after a restore of the contents, a backup and a rescue', async () => {
  const book = await bookWithPredictions();
  const before = await book.contents();
  const again = await restoreContents(temporaryFolder(), before, {
    channelsOf: () => [],
    originalOf: () => new Uint8Array(),
  });
  onTestFinished(() => again.close());
  expect(await again.contents()).toEqual(before);

  const backups = temporaryFolder();
  const { madeAt } = await backUpBook(book.folder, backups, NOW);
  const target = `${temporaryFolder()}/restored`;
  const { book: restored } = await restoreBackup(backups, target, madeAt);
  onTestFinished(() => restored.close());
  expect((await restored.contents()).compressorMaps).toEqual(before.compressorMaps);
  expect((await restored.contents()).predictions).toEqual(before.predictions);
  await restored.close();

  const report = await rescueBook(target, () => null, NOW);
  expect(report).toMatchObject({ lost: [], kept: { compressorMaps: 1 } });
  const rescued = await openBook(target);
  onTestFinished(() => rescued.close());
  expect((await rescued.contents()).compressorMaps).toEqual(before.compressorMaps);
  expect((await rescued.contents()).predictions).toEqual(before.predictions);
});

test('merged: a map of a name that ours has says where it is from, and the sheets that came with it follow', async () => {
  const [ours, theirs] = [await newBook('Ours'), await newBook('Theirs')];
  await ours.addCompressorMap(compressorMap('ours', { name: 'Blower' }));
  await ours.addEngine(engine);
  await ours.addCombination(naming('here', 'Blower'));
  await theirs.addEngine({ ...engine, id: 'other engine', name: 'Eight' });
  await theirs.addCompressorMap(compressorMap('theirs', { name: 'blower', notes: 'another one' }));
  await theirs.addCompressorMap(compressorMap('new', { name: 'Second blower' }));
  await theirs.addCombination({ ...naming('there', ' Blower '), engineId: 'other engine' });
  await theirs.addCombination({ ...naming('also there', 'Second blower'), engineId: 'other engine' });
  await theirs.close();
  await ours.close();
  const report = await mergeBooks(ours.folder, theirs.folder, GO);
  expect(report.added).toMatchObject({ compressorMap: 2, combination: 2 });
  expect(report.renamed).toEqual([
    { kind: 'compressorMap', id: 'theirs', from: 'blower', to: 'blower (from Theirs)' },
  ]);
  const merged = await openBook(ours.folder);
  onTestFinished(() => merged.close());
  expect((await merged.compressorMaps()).map(({ name }) => name)).toEqual([
    'Blower',
    'blower (from Theirs)',
    'Second blower',
  ]);
  expect(mapNamedBy((await merged.combination('here')) as never)).toBe('Blower');
  expect(mapNamedBy((await merged.combination('there')) as never)).toBe('blower (from Theirs)');
  expect(mapNamedBy((await merged.combination('also there')) as never)).toBe('Second blower');
  const once = await merged.contents();
  await merged.close();
  await mergeBooks(ours.folder, theirs.folder, GO);
  const twice = await openBook(ours.folder);
  onTestFinished(() => twice.close());
  expect(await twice.contents()).toEqual(once);
});

test('merged: what both changed of a map stays ours, theirs is in the log; what only they changed is taken', async () => {
  const first = await newBook('Shop');
  await first.addCompressorMap(compressorMap('both'));
  await first.addCompressorMap(compressorMap('only theirs'));
  await first.close();
  const { cpSync } = await import('node:fs');
  const other = temporaryFolder();
  cpSync(first.folder, other, { recursive: true });
  const [ours, theirs] = [await openBook(first.folder), await openBook(other)];
  await ours.changeCompressorMap(compressorMap('both', { notes: 'ours' }), 'ours');
  await theirs.changeCompressorMap(compressorMap('both', { notes: 'theirs' }), 'theirs');
  await theirs.changeCompressorMap(compressorMap('only theirs', { notes: 'theirs' }), 'theirs');
  await ours.close();
  await theirs.close();
  const report = await mergeBooks(first.folder, other, GO);
  expect(report.conflicts).toMatchObject([
    { kind: 'compressorMap', id: 'both', fields: [{ field: 'notes', ours: 'ours', theirs: 'theirs' }] },
  ]);
  expect(report.taken).toMatchObject([{ kind: 'compressorMap', id: 'only theirs' }]);
  const merged = await openBook(first.folder);
  onTestFinished(() => merged.close());
  expect((await merged.compressorMap('both'))!.notes).toBe('ours');
  expect((await merged.compressorMap('only theirs'))!.notes).toBe('theirs');
});
