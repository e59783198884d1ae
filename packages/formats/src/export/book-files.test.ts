import { type Channel, OPEN_AUDIENCE, PLAIN_TREATMENT, type Pull } from '@pullbook/core/pull';
import { absolutePressure, temperature } from '@pullbook/core/quantity';
import { accepted, type Result, refused } from '@pullbook/core/remark';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ExportedBook, ExportFile } from './exported-book.ts';
import { openExport } from './read-export.ts';
import { safeText, textFromSafe } from './safe-text.ts';
import { exportFiles } from './write-export.ts';

function channel(
  meaning: Channel['meaning'],
  kind: Channel['kind'],
  values: number[],
  more: Partial<Channel> = {},
): Channel {
  return {
    meaning,
    name: meaning,
    unit: '',
    kind,
    values: Float64Array.from(values),
    origin: 'measured',
    ...more,
  };
}

function pull(more: Partial<Pull> = {}): Pull {
  return {
    id: '6f0d2c1e-0001-4000-8000-000000000001',
    name: 'Pull 1',
    combinationId: 'c1',
    setUpId: null,
    sessionId: 's1',
    orderInSession: 1,
    recordedAt: '2024-05-03T14:22:00+02:00',
    cell: 'cell 1',
    operator: null,
    form: 'curve',
    channels: [
      channel('engineSpeed', 'engineSpeed', [2000, 2100.5, 2200]),
      channel('torque', 'torque', [300.1, Number.NaN, -0]),
      channel('exhaustTemperature', 'temperature', [900, 901, 902], { name: 'EGT 1' }),
      channel('exhaustTemperature', 'temperature', [903, 904, 905], { name: 'EGT 2' }),
    ],
    summary: null,
    weather: {
      pressure: absolutePressure(98_200),
      temperature: temperature(303.15),
      humidity: { route: 'relativeHumidity', ratio: 0.45 },
      altitude: null,
    },
    carried: { standard: 'observed', factor: 1 },
    sweep: { momentOfInertia: 0.42, inertiaCompensated: 'no' },
    tune: { sparkAdvance: '28°' },
    places: {},
    notes: [{ at: '2024-05-03T14:25:00+02:00', text: '=1+1, "quoted"\nnote' }],
    events: [{ engineSpeedRpm: null, text: 'misfire' }],
    outcome: 'completed',
    treatment: { lags: { lambda: 0.3 }, windowRpm: [2000, 2100], binWidthRpm: null, addInertia: true },
    audience: OPEN_AUDIENCE,
    origin: 'measured',
    fileHash: 'ab12',
    invented: true,
    ...more,
  };
}

/** A book with its channels, as the store's contents have them. */
type WholeBook = Omit<ExportedBook, 'pulls'> & { pulls: Pull[] };
type Originals = ReadonlyMap<string, Uint8Array>;

/** All files of the export. */
async function written({ pulls, ...rest }: WholeBook, bytes: Originals = originals): Promise<ExportFile[]> {
  const heads = pulls.map(({ channels: _, ...head }) => head);
  const source = {
    channelsOf: async (id: string) => pulls.find((one) => one.id === id)!.channels,
    originalOf: async (hash: string) => bytes.get(hash)!,
  };
  const files: ExportFile[] = [];
  for await (const file of exportFiles({ ...rest, pulls: heads }, source)) files.push(file);
  return files;
}

/** Reads files back, whole; refused with all that is wrong. */
async function readBack(
  files: readonly ExportFile[],
): Promise<Result<{ contents: WholeBook; originals: Originals }>> {
  const byPath = new Map(files.map(({ path, bytes }) => [path, bytes]));
  const opened = await openExport(async (path) => byPath.get(path) ?? null);
  if (!opened.ok) return opened;
  const { contents, channelsOf, originalOf, faults } = opened.value;
  const [first, ...others] = await faults();
  if (first) return refused(first, ...others);
  const given = <T>(result: Result<T>): T => {
    if (!result.ok) throw new Error('a fault that was not told');
    return result.value;
  };
  const pulls: Pull[] = [];
  for (const head of contents.pulls) pulls.push({ ...head, channels: given(await channelsOf(head.id)) });
  const back = new Map<string, Uint8Array>();
  for (const { hash } of contents.files) back.set(hash, given(await originalOf(hash)));
  return accepted({ contents: { ...contents, pulls }, originals: back });
}

function book(pulls: Pull[], more: Partial<WholeBook> = {}): WholeBook {
  return {
    info: {
      id: 'b1',
      name: 'Test book',
      invented: true,
      createdAt: '2024-05-03T00:00:00Z',
      schemaVersion: 1,
    },
    engines: [{ id: 'e1', name: 'Six', buildRevision: '1', notes: '', invented: true }],
    combinations: [
      {
        id: 'c1',
        engineId: 'e1',
        name: 'Base cam',
        sheet: {
          schemaVersion: 1,
          name: 'Base cam',
          sections: {
            shortBlock: {
              bore: { text: '96 mm', value: 0.096, kind: 'length', origin: 'measured' },
              cylinders: { text: '6', value: 6, kind: 'count', origin: 'data sheet' },
              stroke: { text: 'unknown', value: null, kind: 'length', origin: 'not stated' },
            },
          },
        },
        revision: 1,
        madeFromId: null,
        packageIds: [],
        createdAt: '2024-05-03T00:00:00Z',
        invented: true,
      },
    ],
    packages: [{ id: 'p1', name: 'Blower kit', covers: ['supercharger', 'drive'], invented: true }],
    setUps: [{ id: 'u1', combinationId: 'c1', fittedAt: '2024-05-03', notes: '' }],
    sessions: [{ id: 's1', name: 'Friday', cell: 'cell 1', day: '2024-05-03', notes: '' }],
    pulls,
    files: [
      {
        hash: 'ab12',
        name: '../=odd name?.csv',
        byteLength: 4,
        addedAt: '2024-05-03T00:00:00Z',
        mapping: [{ index: 0 }],
      },
    ],
    trials: [],
    log: [
      {
        id: 1,
        at: '2024-05-03T00:00:00Z',
        act: 'pull added',
        subject: 'pull 1',
        reason: '',
        before: null,
        after: { a: 1 },
        uid: 'b1/1',
        undoes: null,
        together: 'b1/1',
      },
    ],
    cells: [
      {
        id: 'cell',
        name: 'cell 1',
        brake: 'water brake',
        altitude: 210,
        momentOfInertia: 0.12,
        instruments: [{ id: 'i', name: 'Load cell', measures: 'torque', serial: '7', calibrations: [] }],
        notes: '',
      },
    ],
    layouts: [
      { fingerprint: 'f', name: 'a.csv', columns: [{ index: 0 }], said: { cell: 'x' }, confirmedAt: 'T' },
    ],
    silenced: [{ id: 'V13 pull p1', ruleId: 'V13', subject: 'pull p1', reason: 'new belt', at: 'T' }],
    predictions: [],
    compressorMaps: [],
    publications: [],
    enquiries: [],
    settings: { units: 'si', decimalMark: ',' },
    withdrawn: [{ kind: 'pull', id: 'gone', at: '2024-05-03T00:00:00Z' }],
    ...more,
  };
} // prettier-ignore

const originals: Originals = new Map([['ab12', Uint8Array.from([1, 0, 255, 10])]]);
const jsonOf = (files: ExportFile[], path: string) =>
  JSON.parse(new TextDecoder().decode(files.find((file) => file.path === path)?.bytes));

const summary = pull({
  id: 'remembered',
  form: 'summary',
  channels: [],
  weather: null,
  summary: { peakPower: 250e3, peakPowerRpm: 6200, peakTorque: null, peakTorqueRpm: null },
});

test('a book reads back the same', async () => {
  const contents = book([
    pull(),
    summary,
    ...(['dewPoint', 'wetBulb'] as const).map((route) =>
      pull({
        id: route,
        weather: {
          pressure: absolutePressure(98e3),
          temperature: temperature(300),
          altitude: 410,
          humidity: { route, temperature: temperature(285) },
        },
      }),
    ),
    pull({
      id: 'vapour',
      weather: {
        pressure: absolutePressure(98e3),
        temperature: temperature(300),
        altitude: 410,
        humidity: { route: 'vapourPressure', pressure: absolutePressure(1400) },
      },
    }),
  ]);
  const read = await readBack(await written(contents));
  expect(read).toEqual({ ok: true, value: { contents, originals }, remarks: [] });
});

test('every path is plain and stays inside the folder; keys with bare numbers end in the unit', async () => {
  const files = await written(book([pull({ id: '../../etc/x' })]));
  for (const { path } of files)
    expect(path).toMatch(/^[A-Za-z0-9_-][A-Za-z0-9._-]*(\/[A-Za-z0-9_-][A-Za-z0-9._-]*)?$/);
  expect(new Set(files.map(({ path }) => path)).size).toBe(files.length);
  const json = jsonOf(files, 'book.json');
  expect(json.pulls[0].weather).toEqual({
    pressurePa: 98_200,
    temperatureK: 303.15,
    altitudeM: null,
    humidity: { route: 'relativeHumidity', relativeHumidityRatio: 0.45 },
  });
  expect(json.combinations[0].sheet.sections.shortBlock.bore).toMatchObject({
    text: '96 mm',
    value: 0.096,
    unit: 'm',
  });
  expect(JSON.stringify(json)).not.toContain('"values"');
});

test('how a pull is read goes out with units in its names; an export without it reads as plain', async () => {
  const files = await written(book([pull()]));
  const json = jsonOf(files, 'book.json');
  expect(json.pulls[0].treatment).toEqual({
    lagsS: { lambda: 0.3 },
    windowRpm: [2000, 2100],
    binWidthRpm: null,
    addInertia: true,
  });
  delete json.pulls[0].treatment;
  const older = files.map((file) =>
    file.path === 'book.json' ? { ...file, bytes: new TextEncoder().encode(JSON.stringify(json)) } : file,
  );
  const read = await readBack(older);
  expect(read.ok && read.value.contents.pulls[0]!.treatment).toEqual(PLAIN_TREATMENT);
});

test('doubles come back bit for bit, missing and infinite ones too; any text in any name', async () => {
  const doubles = fc.array(fc.double(), { minLength: 1, maxLength: 30 });
  await fc.assert(
    fc.asyncProperty(
      doubles,
      fc.string({ unit: 'binary', maxLength: 30 }),
      fc.string({ maxLength: 20 }),
      async (values, name, unit) => {
        const channels = [
          channel('engineSpeed', 'engineSpeed', values),
          channel(
            'other',
            'ratio',
            values.map((value) => -value),
            { name, unit },
          ),
        ];
        const contents = book([pull({ name, channels })]);
        const read = await readBack(await written(contents));
        if (!read.ok) throw new Error(JSON.stringify(read.remarks));
        const [back] = read.value.contents.pulls;
        expect(back?.name).toBe(name);
        back?.channels.forEach((one, at) => {
          const bits = (array: Float64Array | undefined) =>
            [...(array ?? [])].map((value) => (Object.is(value, -0) ? '-0' : String(value)));
          expect(bits(one.values)).toEqual(bits(channels[at]?.values));
          expect(one.name).toBe(channels[at]?.name);
        });
      },
    ),
    { seed: 11, numRuns: 200 },
  );
});

describe('text that a spreadsheet would take for a formula', () => {
  test.each(['=1+1', '+1', '-1', '@a', "'=x", "''-x", '\t=x', 'plain', "it's", "'plain"])('%j', (text) => {
    expect(safeText(text)).not.toMatch(/^[=+\-@\t\r]/);
    expect(textFromSafe(safeText(text))).toBe(text);
  });
  test('any text', () =>
    fc.assert(
      fc.property(fc.string(), (text) => textFromSafe(safeText(text)) === text),
      { seed: 3 },
    ));
});

describe('a damaged export is refused, naming the file', async () => {
  const files = await written(book([pull()]));
  const csv = files.find(({ path }) => path.endsWith('.csv') && path.startsWith('pulls'))!;
  const changed = (path: string, change: (text: string) => string) =>
    files.map((file) =>
      file.path === path
        ? { path, bytes: new TextEncoder().encode(change(new TextDecoder().decode(file.bytes))) }
        : file,
    );

  test.each([
    ['no book.json', files.filter(({ path }) => path !== 'book.json'), 'no-export', /book\.json/],
    [
      'a cut book.json',
      changed('book.json', (text) => text.slice(0, 200)),
      'export-damaged',
      /not whole JSON/,
    ],
    [
      'another format',
      changed('book.json', (text) => text.replace('pullbook open export', 'other')),
      'no-export',
      /other/,
    ],
    [
      'a newer format',
      changed('book.json', (text) => text.replace('"schemaVersion": 1', '"schemaVersion": 9')),
      'export-newer',
      /9/,
    ],
    [
      'a list missing',
      changed('book.json', (text) => text.replace('"trials"', '"tribals"')),
      'export-damaged',
      /lacks trials/,
    ],
    ['a missing CSV', files.filter((file) => file !== csv), 'export-file-missing', /pulls\//],
    ['a cut CSV', changed(csv.path, (text) => text.slice(0, -12)), 'export-damaged', /pulls\//],
    [
      'a word in the CSV',
      changed(csv.path, (text) => text.replace('300.1', 'high')),
      'export-damaged',
      /line 2, column 2: “high”/,
    ],
    [
      'a missing original',
      files.filter(({ path }) => !path.startsWith('originals/')),
      'export-file-missing',
      /originals\//,
    ],
    [
      'a cut original',
      files.map((file) =>
        file.path.startsWith('originals/') ? { ...file, bytes: file.bytes.slice(1) } : file,
      ),
      'export-damaged',
      /3 bytes/,
    ],
  ])('%s', async (_, given, code, message) => {
    const read = await readBack(given);
    expect(read.ok).toBe(false);
    expect(read.remarks[0]).toMatchObject({ code, level: 'refusal' });
    expect(read.remarks[0]?.message).toMatch(message);
  });
}); // prettier-ignore
