import { absolutePressure, temperature } from '@pullbook/core/quantity';
import fc from 'fast-check';
import { describe, expect, onTestFinished, test } from 'vitest';
import { NEWEST_SCHEMA } from './migrate.ts';
import type { Book } from './model.ts';
import { openBook } from './open-book.ts';
import { samplesFromBytes } from './samples.ts';
import { temporaryFolder } from './testing/temporary-folder.ts';
import { channel, combination, engine, fileOf, kit, pull, trial } from './testing/things.ts';

async function newBook(folder = temporaryFolder()): Promise<Book> {
  const book = await openBook(folder, { create: { name: 'Test book', invented: true } });
  onTestFinished(() => book.close());
  return book;
}

async function bookWithHardware(): Promise<Book> {
  const book = await newBook();
  await book.addEngine(engine);
  await book.addPackage(kit);
  await book.addCombination(combination('base'));
  await book.addCombination(combination('blown', '96 mm', 'base'));
  await book.addSetUp({
    id: 'set-up',
    combinationId: 'base',
    fittedAt: '2026-03-14T08:00:00Z',
    notes: 'new gaskets',
  });
  await book.addSession({ id: 'session', name: 'Saturday', cell: 'cell 1', day: '2026-03-14', notes: '' });
  return book;
}

/** A pull with every field filled. */
const fullPull = pull('full', {
  combinationId: 'base',
  setUpId: 'set-up',
  sessionId: 'session',
  orderInSession: 2,
  cell: 'cell 1',
  operator: 'day shift',
  weather: {
    pressure: absolutePressure(98_200.1),
    temperature: temperature(303.15),
    humidity: { route: 'relativeHumidity', ratio: 0.45 },
    altitude: null,
  },
  carried: { standard: 'unknown', factor: null },
  sweep: { momentOfInertia: 0.31, inertiaCompensated: 'no' },
  tune: { sparkAdvance: '28°', notes: 'as before' },
  places: { boostTap: 'manifold' },
  notes: [{ at: '2026-03-14T10:42:00+01:00', text: 'belt dusty' }],
  events: [{ engineSpeedRpm: null, text: 'lifted early' }],
  outcome: 'aborted',
  treatment: { lags: { lambda: 0.3 }, windowRpm: [2000, 2900], binWidthRpm: 200, addInertia: true },
});

describe('a new book', () => {
  test('knows its name, has an id and an empty rest', async () => {
    const book = await newBook();
    expect(await book.info()).toMatchObject({
      name: 'Test book',
      invented: true,
      schemaVersion: NEWEST_SCHEMA,
    });
    expect((await book.info()).id).toMatch(/^[0-9a-f-]{36}$/);
    expect(await book.pullHeads()).toEqual([]);
    expect((await book.log()).map(({ act }) => act)).toEqual(['book created']);
  });

  test('opened again with other wishes stays what it is', async () => {
    const folder = temporaryFolder();
    const first = await openBook(folder, { create: { name: 'Test book' } });
    const info = await first.info();
    await first.close();
    const again = await openBook(folder, { create: { name: 'Other name' } });
    expect(await again.info()).toEqual(info);
    await again.close();
  });
});

describe('hardware, set-ups and sessions come back as they went in', () => {
  test('all of them, in their order', async () => {
    const book = await bookWithHardware();
    expect(await book.engines()).toEqual([engine]);
    expect(await book.packages()).toEqual([kit]);
    expect(await book.combinations()).toEqual([combination('base'), combination('blown', '96 mm', 'base')]);
    expect(await book.combination('blown')).toEqual(combination('blown', '96 mm', 'base'));
    expect(await book.combination('nothing')).toBeNull();
    expect((await book.setUps()).map(({ notes }) => notes)).toEqual(['new gaskets']);
    expect((await book.sessions()).map(({ day }) => day)).toEqual(['2026-03-14']);
  });

  test('a combination of an engine that is not there, an id twice: thrown, nothing stored', async () => {
    const book = await newBook();
    await expect(book.addCombination(combination('base'))).rejects.toThrow(/FOREIGN KEY/);
    await book.addEngine(engine);
    await expect(book.addEngine({ ...engine, name: 'other' })).rejects.toThrow(/UNIQUE/);
    expect(await book.combinations()).toEqual([]);
    expect((await book.log()).map(({ act }) => act)).toEqual(['book created', 'engine added']);
  });

  test('an amendment raises the revision and the log holds both sides', async () => {
    const book = await bookWithHardware();
    const before = combination('base');
    const { sheet } = combination('base', '96.5 mm');
    const after = await book.amendCombination('base', sheet, 'measured again');
    expect(after).toEqual({ ...before, sheet, revision: 2 });
    expect(await book.combination('base')).toEqual(after);
    expect((await book.log()).at(-1)).toMatchObject({
      act: 'combination amended',
      subject: 'combination base',
      reason: 'measured again',
      before,
      after,
    });
    const renamed = await book.amendCombination('base', { ...sheet, name: 'Bored block' }, 'clearer name');
    expect(renamed).toMatchObject({ name: 'Bored block', revision: 3 });
    await expect(book.amendCombination('nothing', sheet, '')).rejects.toThrow(/no combination nothing/);
  });
});

describe('pulls', () => {
  test('every field and channel comes back, one pull and several in the order asked', async () => {
    const book = await bookWithHardware();
    const remembered = pull('remembered', {
      form: 'summary',
      channels: [],
      origin: 'remembered',
      summary: { peakPower: 245_000, peakPowerRpm: null, peakTorque: null, peakTorqueRpm: null },
    });
    await book.addPulls([fullPull, remembered]);
    expect(await book.pull('full')).toEqual(fullPull);
    expect(await book.pulls(['remembered', 'nothing', 'full'])).toEqual([remembered, fullPull]);
    expect(await book.pull('nothing')).toBeNull();
    const { channels: _, ...head } = fullPull;
    expect((await book.pullHeads())[1]).toEqual(head);
  });

  test('heads come newest first', async () => {
    const book = await newBook();
    await book.addPulls([pull('one'), pull('two')]);
    await book.addPulls([pull('three')]);
    expect((await book.pullHeads()).map(({ id }) => id)).toEqual(['three', 'two', 'one']);
  });

  test('samples come back bit by bit: infinities, minus zero, the payload of a NaN', async () => {
    const book = await newBook();
    const bits = fc
      .uint8Array({ minLength: 8, maxLength: 8 * 40 })
      .map((bytes) => bytes.slice(0, bytes.length & ~7));
    let number = 0;
    const property = fc.asyncProperty(bits, async (bytes) => {
      const values = samplesFromBytes(bytes);
      const id = String(number++);
      await book.addPulls([pull(id, { channels: [{ ...channel('torque', []), values }] })]);
      const read = (await book.pull(id))!.channels[0]!.values;
      expect(new Uint8Array(read.buffer)).toEqual(bytes);
    });
    await fc.assert(property, { seed: 754, numRuns: 40 });
    const odd = Float64Array.of(Number.NaN, -0, Number.POSITIVE_INFINITY, 5e-324);
    await book.addPulls([pull('odd', { channels: [{ ...channel('torque', []), values: odd }] })]);
    expect((await book.pull('odd'))!.channels[0]!.values).toEqual(odd);
  });

  test('one bad pull among several: none is stored', async () => {
    const book = await newBook();
    const uneven = pull('uneven', { channels: [channel('engineSpeed', [1, 2]), channel('torque', [1])] });
    await expect(book.addPulls([pull('good'), uneven])).rejects.toThrow(/different lengths/);
    await expect(book.addPulls([pull('good'), pull('good')])).rejects.toThrow();
    await expect(book.addPulls([pull('bare', { channels: [] })])).rejects.toThrow(/without channels/);
    await expect(book.addPulls([pull('both', { form: 'summary' })])).rejects.toThrow(/summary with channels/);
    expect(await book.pullHeads()).toEqual([]);
  });

  test('what was written down is amended with both sides in the log, the channels stay', async () => {
    const book = await bookWithHardware();
    await book.addPulls([fullPull]);
    const amended = await book.amendPull('full', { cell: 'cell 2', weather: null }, 'wrong cell');
    expect({ ...amended, channels: fullPull.channels }).toEqual({
      ...fullPull,
      cell: 'cell 2',
      weather: null,
    });
    expect(await book.pull('full')).toEqual({ ...amended, channels: fullPull.channels });
    expect((await book.log()).at(-1)).toMatchObject({
      act: 'pull amended',
      reason: 'wrong cell',
      before: { cell: 'cell 1', weather: fullPull.weather },
      after: { cell: 'cell 2', weather: null },
    });
  });

  test('nothing measured is amended', async () => {
    const book = await newBook();
    await book.addPulls([pull('one')]);
    const forced = { channels: [] } as object;
    await expect(book.amendPull('one', forced, '')).rejects.toThrow(/"channels" of a pull cannot be amended/);
    await expect(book.amendPull('nothing', { cell: 'x' }, '')).rejects.toThrow(/no pull nothing/);
    await expect(book.amendPull('one', { combinationId: 'nothing' }, '')).rejects.toThrow(/FOREIGN KEY/);
    expect(await book.pull('one')).toEqual(pull('one'));
  });
});

describe('files', () => {
  test('bytes and pulls go in together and come back', async () => {
    const book = await newBook();
    const { file, bytes } = fileOf('rpm,torque\n2000,300\n2500,310\n');
    const pulls = [pull('a', { fileHash: file.hash }), pull('b', { fileHash: file.hash })];
    const mapped = { ...file, mapping: [{ index: 0, meaning: 'engineSpeed', unit: 'rpm' }] };
    await book.addFileWithPulls(mapped, bytes, pulls);
    expect(await book.files()).toEqual([mapped]);
    expect(await book.file(file.hash)).toEqual(mapped);
    expect(await book.file('0'.repeat(64))).toBeNull();
    expect(new Uint8Array(await book.original(file.hash))).toEqual(bytes);
    expect(await book.pullIdsOfFile(file.hash)).toEqual(['a', 'b']);
    expect(await book.pulls(['a', 'b'])).toEqual(pulls);
  });

  test('the same bytes twice are said to be there, and nothing is added', async () => {
    const book = await newBook();
    const { file, bytes } = fileOf('rpm,torque\n2000,300\n');
    await book.addFileWithPulls(file, bytes, [pull('a', { fileHash: file.hash })]);
    const again = book.addFileWithPulls({ ...file, name: 'copy.csv' }, bytes, [
      pull('b', { fileHash: file.hash }),
    ]);
    await expect(again).rejects.toMatchObject({
      code: 'exists',
      message: expect.stringContaining('"pull.csv"'),
    });
    expect((await book.pullHeads()).map(({ id }) => id)).toEqual(['a']);
    expect(new Uint8Array(await book.original(file.hash))).toEqual(bytes);
  });

  test('a wrong hash, a wrong length, a pull of another file: thrown', async () => {
    const book = await newBook();
    const { file, bytes } = fileOf('one');
    const other = fileOf('two');
    await expect(book.addFileWithPulls(other.file, bytes, [])).rejects.toThrow(/do not have the hash/);
    await expect(book.addFileWithPulls({ ...file, byteLength: 9 }, bytes, [])).rejects.toThrow(/9 bytes/);
    await expect(book.addFileWithPulls(file, bytes, [pull('a')])).rejects.toThrow(
      /does not come from the file/,
    );
    await expect(book.original('../../secret')).rejects.toThrow(/not a SHA-256/);
    expect(await book.files()).toEqual([]);
  });
});

describe('trials', () => {
  test('come back as they went in; a change replaces and the log holds both sides', async () => {
    const book = await bookWithHardware();
    await book.addPulls([pull('one'), pull('two')]);
    const before = trial('trial', {
      combinations: [
        { key: 'A', combinationId: 'base', shortName: 'base' },
        { key: 'B', combinationId: 'blown', shortName: 'blown' },
      ],
      pulls: [
        { pullId: 'two', key: 'B', role: 'counted', reason: null },
        { pullId: 'one', key: 'A', role: 'rejected', reason: 'lifted early' },
      ],
    });
    await book.addTrial(before);
    await book.addTrial(trial('survey', { kind: 'survey' }));
    expect(await book.trials()).toEqual([before, trial('survey', { kind: 'survey' })]);
    const after = {
      ...before,
      averagesWindowRpm: [4000, 6500] as [number, number],
      pulls: before.pulls.slice(0, 1),
    };
    await book.changeTrial(after, 'narrower window');
    expect(await book.trial('trial')).toEqual(after);
    expect((await book.log()).at(-1)).toMatchObject({
      act: 'trial changed',
      reason: 'narrower window',
      before,
      after,
    });
    expect(await book.trial('nothing')).toBeNull();
    await expect(book.changeTrial(trial('nothing'), '')).rejects.toThrow(/no trial nothing/);
  });

  test('a change that cannot be leaves the trial as it was', async () => {
    const book = await newBook();
    await book.addTrial(trial('trial'));
    const bad = trial('trial', { pulls: [{ pullId: 'nothing', key: 'A', role: 'counted', reason: null }] });
    await expect(book.changeTrial(bad, '')).rejects.toThrow(/FOREIGN KEY/);
    expect(await book.trial('trial')).toEqual(trial('trial'));
  });
});

test('many calls at once do not get in each other’s way', async () => {
  const book = await newBook();
  const ids = Array.from({ length: 30 }, (_, index) => `pull-${index}`);
  await Promise.all(ids.flatMap((id) => [book.addPulls([pull(id)]), book.pullHeads(), book.pull(id)]));
  expect(new Set((await book.pullHeads()).map(({ id }) => id))).toEqual(new Set(ids));
});
