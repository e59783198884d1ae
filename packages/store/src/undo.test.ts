import { expect, onTestFinished, test } from 'vitest';
import type { Book } from './model.ts';
import { openBook } from './open-book.ts';
import { temporaryFolder } from './testing/temporary-folder.ts';
import { combination, engine, fileOf, pull, trial } from './testing/things.ts';

async function newBook(now?: () => Date): Promise<Book> {
  const book = await openBook(temporaryFolder(), { create: { name: 'Shop' }, ...(now ? { now } : {}) });
  onTestFinished(() => book.close());
  return book;
}

/** A book with an engine, two combinations and one pull of the first. */
async function filledBook(): Promise<Book> {
  const book = await newBook();
  await book.addEngine(engine);
  await book.addCombination({ ...combination('base'), packageIds: [] });
  await book.addCombination({ ...combination('cam'), packageIds: [] });
  await book.addPulls([pull('one', { combinationId: 'base' })]);
  return book;
}

const members = {
  combinations: [
    { key: 'A', combinationId: 'base', shortName: 'base' },
    { key: 'B', combinationId: 'cam', shortName: 'cam' },
  ],
  pulls: [{ pullId: 'one', key: 'A', role: 'counted' as const, reason: null }],
};

test('the last amendment is put back, logged as an act of its own, and can be done again', async () => {
  const book = await filledBook();
  await book.amendPull('one', { cell: 'cell 2' }, 'wrong cell');
  const [undone] = await book.undo(null);
  expect((await book.pull('one'))?.cell).toBeNull();
  expect(undone).toMatchObject({
    act: 'undone: pull amended',
    before: { cell: 'cell 2' },
    after: { cell: null },
  });
  const amendment = (await book.log()).find(({ act }) => act === 'pull amended')!;
  expect(undone!.undoes).toBe(amendment.uid);
  expect((await book.logPage({ limit: 10 })).undone).toEqual(new Set([amendment.uid]));

  const [again] = await book.undo(undone!.uid);
  expect(again!.act).toBe('done again: pull amended');
  expect((await book.pull('one'))?.cell).toBe('cell 2');
  expect((await book.logPage({ limit: 10 })).undone).toEqual(new Set([undone!.uid]));
});

test('undone step by step, newest first, until nothing is left', async () => {
  const book = await newBook();
  await book.addEngine(engine);
  await book.addPulls([pull('one')]);
  await book.amendPull('one', { name: 'First' }, 'named');
  await book.amendPull('one', { name: 'Second' }, 'named again');
  const acts: string[] = [];
  for (let step = 0; step < 4; step += 1) acts.push((await book.undo(null))[0]!.act);
  expect(acts).toEqual([
    'undone: pull amended',
    'undone: pull amended',
    'undone: pull added',
    'undone: engine added',
  ]);
  expect(await book.counts()).toEqual({
    ...{ engines: 0, combinations: 0, pulls: 0, trials: 0, files: 0, enquiries: 0 },
  });
  await expect(book.undo(null)).rejects.toMatchObject({
    code: 'cannot be undone',
    message: expect.stringContaining('nothing to undo'),
  });
});

test('an amendment under a later one of the same field is refused and names what stands in the way', async () => {
  const book = await filledBook();
  await book.amendPull('one', { cell: 'cell 2' }, 'wrong cell');
  await book.amendPull('one', { cell: 'cell 3' }, 'wrong again');
  await book.amendPull('one', { operator: 'J' }, 'who');
  const entries = await book.log();
  const [first, second, third] = entries.filter(({ act }) => act === 'pull amended');
  const refusal = await book.undo(first!.uid).catch((trouble) => trouble);
  expect(refusal).toMatchObject({ code: 'changed meanwhile' });
  expect(refusal.since.map(({ uid }: { uid: string }) => uid)).toEqual([second!.uid, third!.uid]);
  expect(await book.log()).toEqual(entries);
  // Another field does not stand in the way.
  await book.undo(second!.uid);
  expect(await book.pull('one')).toMatchObject({ cell: 'cell 2', operator: 'J' });
});

test('a file with its pulls is one step: withdrawn together, bytes and channels kept, brought back together', async () => {
  const book = await newBook();
  const { file, bytes } = fileOf('rpm,torque');
  const pulls = ['a', 'b'].map((id) => pull(id, { fileHash: file.hash }));
  await book.addFileWithPulls(file, bytes, pulls);
  const undone = await book.undo(null);
  expect(undone.map(({ act }) => act)).toEqual([
    'undone: pull added',
    'undone: pull added',
    'undone: file added',
  ]);
  expect(await book.pullHeads()).toEqual([]);
  expect(await book.pullNames()).toEqual([]);
  expect(await book.files()).toEqual([]);
  expect(await book.pull('a')).toBeNull();
  expect(await book.pullIdsOfFile(file.hash)).toEqual([]);
  expect(Buffer.from(await book.original(file.hash)).toString()).toBe('rpm,torque');
  expect((await book.contents()).pulls).toEqual(pulls);

  await book.undo(undone[0]!.uid);
  expect(await book.pulls(['a', 'b'])).toEqual(pulls);
  expect(await book.files()).toEqual([file]);
});

test('bytes of a file that was taken back can come in anew, with other columns; never twice', async () => {
  const book = await newBook();
  const { file, bytes } = fileOf('rpm,torque');
  await book.addFileWithPulls({ ...file, mapping: ['first'] }, bytes, [pull('a', { fileHash: file.hash })]);
  const [undoing] = await book.undo(null);
  await book.addFileWithPulls({ ...file, mapping: ['second'] }, bytes, [pull('b', { fileHash: file.hash })]);
  expect(await book.pullIdsOfFile(file.hash)).toEqual(['b']);
  expect((await book.file(file.hash))?.mapping).toEqual(['second']);
  await expect(book.undo(undoing!.uid)).rejects.toMatchObject({ code: 'changed meanwhile' });
  expect(await book.pullIdsOfFile(file.hash)).toEqual(['b']);
  await book.undo(null);
  await book.undo(undoing!.uid);
  expect(await book.pullIdsOfFile(file.hash)).toEqual(['a']);
  expect((await book.file(file.hash))?.mapping).toEqual(['first']);
});

test('what is used stays: the pull of a trial, the combination of a pull, the engine of a combination', async () => {
  const book = await filledBook();
  await book.addTrial(trial('t', members));
  const uidOf = async (act: string) => (await book.log()).find((entry) => entry.act === act)!.uid;
  for (const act of ['pull added', 'combination added', 'engine added']) {
    await expect(book.undo(await uidOf(act))).rejects.toMatchObject({ code: 'in use' });
  }
  await expect(book.undo(await uidOf('pull added'))).rejects.toThrow('What does the longer cam add');
  await book.undo(await uidOf('trial added'));
  await book.undo(await uidOf('pull added'));
  expect(await book.counts()).toMatchObject({ trials: 0, pulls: 0, combinations: 2 });
});

test('nothing comes back, and nothing new rests, on what was withdrawn', async () => {
  const book = await filledBook();
  await book.addTrial(trial('t', members));
  const [trialGone] = await book.undo(null);
  await book.undo((await book.log()).find(({ act }) => act === 'pull added')!.uid);
  await expect(book.undo(trialGone!.uid)).rejects.toThrow('"Pull one" was taken out');
  await expect(book.addTrial(trial('u', members))).rejects.toMatchObject({ code: 'changed meanwhile' });
  const cam = (await book.log()).find(({ subject }) => subject === 'combination cam')!;
  await book.undo(cam.uid);
  await expect(book.addPulls([pull('two', { combinationId: 'cam' })])).rejects.toThrow('"Combination cam"');
  expect(await book.counts()).toMatchObject({ pulls: 0, trials: 0, combinations: 1 });
});

test('a trial, a sheet, an engine, a cell, a layout, settings: each change is put back', async () => {
  const book = await filledBook();
  const cell = {
    id: 'c',
    name: 'cell 1',
    brake: '',
    altitude: 12,
    momentOfInertia: null,
    instruments: [],
    notes: '',
  };
  const layout = { fingerprint: 'f', name: 'a.csv', columns: [], said: {}, confirmedAt: '2026-03-14' };
  await book.addTrial(trial('t', members));
  await book.addCell(cell);
  await book.keepLayout(layout);
  await book.changeSettings({ units: 'si' });
  const stands = async () => ({
    trials: await book.trials(),
    sheet: (await book.combination('base'))!.sheet,
    engines: await book.engines(),
    cells: await book.cells(),
    layouts: await book.layouts(),
    settings: await book.settings(),
  });
  const before = await stands();
  await book.changeTrial({ ...trial('t', members), question: 'Another?' }, 'asked anew');
  await book.amendCombination('base', combination('base', '97 mm').sheet, 'measured');
  await book.changeEngine({ ...engine, buildRevision: '3' }, 'rebuilt');
  await book.changeCell({ ...cell, altitude: 20 }, 'map read');
  await book.keepLayout({ ...layout, name: 'b.csv' });
  await book.changeSettings({ units: 'us', cell: 'cell 1' });
  // Columns are confirmed beside an import: "the last act" never means them.
  for (let step = 0; step < 5; step += 1) await book.undo(null);
  await book.undo((await book.log()).findLast(({ act }) => act === 'layout confirmed')!.uid);
  expect(await stands()).toEqual(before);
  // The revision goes on: what was printed with the second one stays told apart.
  expect((await book.combination('base'))!.revision).toBe(3);
});

test('a clock set back: order goes by number, and the opening says how far it stands behind', async () => {
  const folder = temporaryFolder();
  const noon = new Date('2026-03-14T12:00:00Z');
  const first = await openBook(folder, { create: { name: 'Shop' }, now: () => noon });
  await first.addPulls([pull('one')]);
  expect(first.clockBehindMs).toBe(0);
  await first.close();
  const earlier = new Date('2026-03-14T09:00:00Z');
  const second = await openBook(folder, { now: () => earlier });
  onTestFinished(() => second.close());
  expect(second.clockBehindMs).toBe(3 * 3600 * 1000);
  await second.addPulls([pull('two')]);
  expect((await second.pullNames()).map(({ id }) => id)).toEqual(['two', 'one']);
  const log = await second.log();
  expect(log.at(-1)).toMatchObject({ subject: 'pull two', at: earlier.toISOString() });
  expect((await second.undo(null))[0]!.subject).toBe('pull two');
});

const layout = (name: string) => ({
  fingerprint: 'rpm,load',
  name,
  columns: [name],
  said: null,
  confirmedAt: '2026-03-14T10:00:00Z',
});

test('a combination with its new engine is one step', async () => {
  const book = await newBook();
  await book.addCombination({ ...combination('base'), packageIds: [] }, engine);
  const undone = await book.undo(null);
  expect(undone.map(({ act }) => act)).toEqual(['undone: combination added', 'undone: engine added']);
  expect([await book.engines(), await book.combinations()]).toEqual([[], []]);
  await book.undo(undone[0]!.uid);
  expect((await book.engines()).map(({ id }) => id)).toEqual(['engine']);
  expect((await book.combinations()).map(({ id }) => id)).toEqual(['base']);
});

test('columns confirmed with a file are taken back with it, unless somebody confirmed them anew', async () => {
  const book = await newBook();
  const [first, second] = [fileOf('first.csv'), fileOf('second.csv')];
  await book.addFileWithPulls(
    first.file,
    first.bytes,
    [pull('a', { fileHash: first.file.hash })],
    layout('first'),
  );
  const undone = await book.undo(null);
  expect(undone.map(({ act }) => act)).toEqual([
    'undone: layout confirmed',
    'undone: pull added',
    'undone: file added',
  ]);
  expect(await book.layouts()).toEqual([]);
  await book.undo(undone[0]!.uid);
  expect(await book.layouts()).toEqual([layout('first')]);

  const pulls = [pull('b', { fileHash: second.file.hash })];
  await book.addFileWithPulls(second.file, second.bytes, pulls, layout('second'));
  const done = (await book.log()).find(({ act }) => act === 'done again: file added')!;
  expect((await book.undo(done.uid)).map(({ act }) => act)).toEqual([
    'undone: pull added',
    'undone: file added',
  ]);
  expect(await book.layouts()).toEqual([layout('second')]);
});
