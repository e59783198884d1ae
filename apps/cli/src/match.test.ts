import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { captured, capturedJson } from './testing/captured.ts';

const samples = join(dirname(fileURLToPath(import.meta.url)), '..', '..', '..', 'samples');
const matchFile = (name: string) => join(samples, 'match', name);

let folder = '';
let book = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-match-cli-'));
  book = join(folder, 'demo');
  await captured(['demo', '--book', book]);
}, 60_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

/** Names that stand in the description of the command's JSON. */
const NAMES = [
  'engineSpeedRpm',
  'boostKpa',
  'manifoldPressureKpa',
  'manifoldTemperatureC',
  'compressorPressureRatio',
  'compressorEfficiency',
  'impellerSpeedRpm',
  'airFlowKgPerS',
  'drivePowerKw',
  'frictionPowerKw',
  'brakePowerKw',
  'brakeTorqueNm',
  'surgeMarginPercent',
  'chokeMarginPercent',
  'state',
];

/** A match file that works, to be spoiled. */
const sound = () => readFile(matchFile('from-a-table.yaml'), 'utf8');

async function spoiled(from: string, to: string): Promise<string> {
  const text = await sound();
  const mapText = text.replaceAll('../maps', join(samples, 'maps'));
  expect(mapText).toContain(from);
  const file = join(folder, 'spoiled.yaml');
  await writeFile(file, mapText.replace(from, to));
  return file;
}

describe('a match file', () => {
  test('gives its points with bands, what was tried, and what was assumed', async () => {
    const { code, json } = await capturedJson(['match', matchFile('from-a-table.yaml'), '--draws', '40']);
    expect(code).toBe(0);
    expect(json.schemaVersion).toBe(1);
    expect(json.points).toHaveLength(9);
    for (const point of json.points) {
      for (const name of NAMES) expect(point, name).toHaveProperty(name);
      expect(point.boostKpaLow).toBeLessThan(point.boostKpaHigh);
      expect(point.brakePowerKwLow).toBeLessThan(point.brakePowerKwHigh);
    }
    expect(json.tried.map(({ name }: { name: string }) => name)).toEqual([
      'smaller blower pulley',
      'without the cooler',
      'breathes better',
    ]);
    expect(json.tried[0].differences.from).toBe('A');
    expect(json.assumptions.length).toBeGreaterThan(0);
    expect(json.cautions[0]).toContain('planning estimate');
    expect(Array.isArray(json.findings)).toBe(true);
  });

  test('without bands the curves alone', async () => {
    const { json } = await capturedJson(['match', matchFile('rated-point.yaml'), '--no-bands']);
    expect(json.points[0]).not.toHaveProperty('boostKpaLow');
    expect(json.draws).toBeNull();
    expect(json.map).toMatchObject({ form: 'rated' });
  });

  test('with every input stated nothing is assumed that an outside solver would not know', async () => {
    const { json } = await capturedJson(['match', matchFile('outside-solver.yaml'), '--no-bands']);
    expect(json.assumptions).toEqual([]);
    for (const { compressorEfficiency } of json.points)
      expect(compressorEfficiency).toBe(json.points[0].compressorEfficiency);
  });

  test('its points go into a table of their own', async () => {
    const file = join(folder, 'points.csv');
    const { code } = await captured(['match', matchFile('from-a-table.yaml'), '--no-bands', '--csv', file]);
    expect(code).toBe(0);
    const [heading, ...rows] = (await readFile(file, 'utf8')).trim().split('\n');
    expect(heading).toContain('engineSpeedRpm,state,boostKpa');
    expect(rows).toHaveLength(4 * 9);
    for (const row of rows) expect(row.split(',')).toHaveLength(heading!.split(',').length);
  });

  test('is printed for people with the cautions last', async () => {
    const { code, out } = await captured([
      'match',
      matchFile('from-a-table.yaml'),
      '--no-bands',
      '--units',
      'si',
    ]);
    expect(code).toBe(0);
    expect(out).toContain('Power, kW');
    expect(out.trim().split('\n').at(-2)).toContain('planning estimate');
    expect(out.split('The mechanical efficiency')).toHaveLength(2);
  });
});

const PULLEYS = 'crankPulleyDiameter: 190 mm\n    blowerPulleyDiameter: 85 mm';
const PULLEYS_EXCHANGED = 'crankPulleyDiameter: 85 mm\n    blowerPulleyDiameter: 190 mm';

describe('bad input is named and survived', () => {
  test.each([
    [
      'a pulley of zero',
      'blowerPulleyDiameter: 85 mm',
      'blowerPulleyDiameter: 0 mm',
      /blowerPulleyDiameter: 0 mm/,
    ],
    ['an effectiveness above one', 'effectiveness: 70 %', 'effectiveness: 130 %', /130 %/],
    ['another kind of supercharger', 'type: centrifugal', 'type: roots', /roots.*centrifugal/s],
    ['no step-up', '    stepUp: 3.6\n', '', /step-up/],
    ['a map that is not there', 'shop-blower.csv', 'none.csv', /none\.csv is not there/],
    ['power below zero', '2000, 50', '2000, -50', /2,000 rpm/],
    ['a barometer of no place', 'pressure: 97 kPa', 'pressure: 9.7 kPa', /9\.7 kPa/],
    ['no baseline', 'baseline:', 'baselines:', /baseline/],
    ['a slip of 60 %', 'slip: 1 %', 'slip: 60 %', /60 % cannot be/],
    ['a cell that is no number', '2500, 65', '2500, NaN', /line 38.+brake power/],
    ['nine kilometres up', 'pressure: 97 kPa', 'pressure: 30.8 kPa', /30\.8 kPa/],
  ])('%s', async (_, from, to, words) => {
    const { code, json } = await capturedJson(['match', await spoiled(from, to)]);
    expect(code).toBe(1);
    expect(json.error.code).not.toBe('internal');
    expect(json.error.message).toMatch(words);
    expect(json.error.message).not.toMatch(/NaN|undefined|\[object/);
  });

  test.each([
    ['demand beyond choke', 'bands:', 'model: { swallowingScale: 2 }\nbands:', 'choked'],
    [
      'a coolant hotter than the charge',
      'coolantTemperature: 20 °C',
      'coolantTemperature: 95 °C',
      'on the map',
    ],
    ['pulleys exchanged', PULLEYS, PULLEYS_EXCHANGED, 'choked'],
    ['air in pounds a minute', 'air flow [kg/s]', 'air flow [lb/min]', 'surge'],
    ['one cylinder for six', 'cylinders: 6', 'cylinders: 1', 'on the map'],
    ['a limit below the table', 'engineSpeedLimit: 6500 rpm', 'engineSpeedLimit: 4500 rpm', 'on the map'],
    [
      'a loss of twice the atmosphere',
      'bands:',
      'model: { inletLoss: { pressureDifference: 200 kPa, atFlow: 0.1 kg/s } }\nbands:',
      'surge risk',
    ],
    ['forty below', 'temperature: 32 °C', 'temperature: -40 °C', 'surge'],
  ])('%s is computed and said', async (_, from, to, state) => {
    const { code, json } = await capturedJson(['match', await spoiled(from, to), '--no-bands']);
    expect(code).toBe(0);
    expect(json.points.map((point: { state: string }) => point.state)).toContain(state);
    const said = [...json.findings, ...json.assumptions].map(({ message }: { message: string }) => message);
    expect(said.join(' ')).toMatch(
      /chokes|heats the charge|exchanged|its unit|bore, stroke and cylinders|limit on the sheet|in the way|surges/,
    );
    for (const point of json.points)
      for (const [name, value] of Object.entries(point))
        if (value === null) expect([name, point.state], name).toContain('choked');
  });

  test.each([
    ['two things at once', ['--trial', 'a', '--combination', 'b'], 'match-of-what'],
    ['nothing at all', [], 'match-of-what'],
    ['a prediction without its trial', ['--combination', 'b', '--keep', 'B'], 'keep-without-trial'],
    ['a prediction without a band', ['--trial', 'a', '--keep', 'B', '--no-bands'], 'keep-without-bands'],
    ['a change without a value', ['--trial', 'a', '--what-if', 'cooler'], 'what-if-not-read'],
    ['weather without temperature', ['--trial', 'a', '--pressure', '98kPa'], 'match-air'],
  ])('%s', async (_, options, expected) => {
    const { code, json } = await capturedJson(['match', ...options, '--book', book]);
    expect(code).toBe(1);
    expect(json.error.code).toBe(expected);
  });
});

describe('a match in the book', () => {
  const SMALLER = 'What does the smaller pulley add?';

  test('of a trial: each combination, and what is tried against its own', async () => {
    const { code, json } = await capturedJson([
      ...['match', '--trial', SMALLER, '--book', book, '--draws', '40'],
      ...['--on', 'A', '--what-if', 'blowerPulleyDiameter=80 mm', '--what-if', 'cooler=none'],
    ]);
    expect(code).toBe(0);
    expect(
      json.matches.map(({ differences }: { differences: { from: string } | null }) => differences?.from),
    ).toEqual([undefined, 'A', 'A']);
    expect(json.matches[0].fit.parameters.length).toBeGreaterThan(3);
    expect(json.matches[0].measured.points.length).toBeGreaterThan(10);
  });

  test('fitted on one pulley alone, the other is foretold by it', async () => {
    const { json } = await capturedJson([
      ...['match', '--trial', SMALLER, '--book', book, '--no-bands', '--fit-on', 'A'],
    ]);
    expect(json.matches.map(({ fit }: { fit: object | null }) => fit !== null)).toEqual([true, false]);
    const strange = await capturedJson([
      ...['match', '--trial', SMALLER, '--book', book, '--no-bands', '--fit-on', 'Q'],
    ]);
    expect(strange.json.error.message).toContain('There are: A, B');
  });

  test('of one combination: at the top, as from a file', async () => {
    const { json } = await capturedJson([
      ...['match', '--combination', 'Supercharged, base cam', '--book', book, '--no-bands'],
      ...['--pressure', '83kPa', '--temperature', '30C'],
    ]);
    expect(json.airPressureKpa).toBe(83);
    expect(json.points.length).toBeGreaterThan(10);
    expect(json.tried).toEqual([]);
    expect(json).not.toHaveProperty('matches');
  });

  test('nothing that is no match can be tried', async () => {
    const { code, json } = await capturedJson([
      ...['match', '--trial', SMALLER, '--book', book, '--no-bands', '--what-if', 'pulley=80 mm'],
    ]);
    expect(code).toBe(1);
    expect(json.error.message).toContain('blowerPulleyDiameter');
  });
});

describe('compressor maps', () => {
  test('are added, listed, shown, changed, exported alike, and taken back', async () => {
    const file = join(samples, 'maps', 'shop-blower.csv');
    const added = await capturedJson(['map', 'add', file, '--book', book]);
    expect(added.code).toBe(0);
    expect(added.json.quality.lines).toHaveLength(5);
    const again = await capturedJson(['map', 'add', file, '--book', book]);
    expect(again.json.error.code).toBe('map-name');

    const changed = await capturedJson(
      ['map', 'change', added.json.name, '--name', 'Second', '--reason', 'renamed', '--book', book].slice(),
    );
    expect(changed.json.name).toBe('Second');
    const out = join(folder, 'out.csv');
    expect((await captured(['map', 'export', 'Second', '--out', out, '--book', book])).code).toBe(0);
    const other = join(folder, 'other');
    const back = await capturedJson(['map', 'add', out, '--book', other]);
    expect(back.json.points).toEqual(added.json.points);

    const list = await capturedJson(['map', 'list', '--book', book]);
    expect(list.json.maps.map(({ name }: { name: string }) => name)).toContain('Second');
    for (const _ of ['renaming', 'adding']) expect((await captured(['undo', '--book', book])).code).toBe(0);
    const after = await capturedJson(['map', 'list', '--book', book]);
    expect(after.json.maps.map(({ name }: { name: string }) => name)).not.toContain('Second');
    expect((await capturedJson(['map', 'show', 'Second', '--book', book])).json.error.code).toBe(
      'unknown-id',
    );
  });

  test.each([
    'invalid-mixed-efficiency.csv',
    'invalid-no-reference.csv',
    'invalid-unit.csv',
    'invalid-cell.csv',
  ])('%s is refused with what to write', async (name) => {
    const { code, json } = await capturedJson(['map', 'add', join(samples, 'maps', name), '--book', book]);
    expect(code).toBe(1);
    expect(json.error.message).toMatch(/[Ww]rite|Accepted/);
  });
});
