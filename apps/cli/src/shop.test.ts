import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { captured, capturedJson, stepTest } from './testing/captured.ts';

let folder = '';
const at = (name: string): string => join(folder, name);
const book = (): string[] => ['--book', at('book')];

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-shop-'));
  await writeFile(at('base.csv'), stepTest(1));
  await writeFile(
    at('sign.svg'),
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 3 2"><path d="M0 0h3"/></svg>',
  );
});
afterAll(() => rm(folder, { recursive: true, force: true }));

test('settings: kept, shown, used where a flag is not given; a flag goes before them', async () => {
  const set = await capturedJson([
    'settings',
    '--set',
    'units=si',
    '--set',
    'decimalMark=,',
    '--set',
    'cell=Cell 1',
    '--set',
    'correction=observed',
    '--mark',
    at('sign.svg'),
    ...book(),
  ]);
  expect(set.code).toBe(0);
  expect(set.json).toMatchObject({
    schemaVersion: 1,
    units: 'si',
    decimalMark: ',',
    mark: { mediaType: 'image/svg+xml', width: 3, height: 2 },
  });
  expect(set.json.mark.base64).toBeUndefined();
  const imported = await capturedJson(['import', at('base.csv'), ...book()]);
  expect(imported.code).toBe(0);
  const byBook = await captured(['list', 'pulls', ...book()]);
  expect(byBook.out).toContain('kW');
  const byFlag = await captured(['list', 'pulls', '--units', 'us', ...book()]);
  expect(byFlag.out).toContain('hp');
  const air = ['air', '--pressure', '98.2kPa', '--temperature', '30C'];
  expect((await captured([...air, ...book()])).out).toContain('98,2');
  expect((await captured(air)).out).toContain('inHg');
});

test('a setting that cannot be is refused in words, and nothing is kept', async () => {
  const { code, json } = await capturedJson(['settings', '--set', 'units=furlongs', ...book()]);
  expect(code).toBe(1);
  expect(json.error.message).toBe('Setting units: "furlongs" cannot stand there. Accepted: us, si.');
  expect((await capturedJson(['settings', '--set', 'units', ...book()])).json.error.code).toBe(
    'setting-without-value',
  );
  expect((await capturedJson(['settings', ...book()])).json.units).toBe('si');
});

test('a cell: named by a pull, described, with instrument and calibration', async () => {
  const before = await capturedJson(['cell', 'list', ...book()]);
  expect(before.json.undescribed).toEqual([{ name: 'Cell 1', pulls: 1 }]);
  const added = await capturedJson([
    'cell',
    'add',
    'Cell 1',
    '--brake',
    'water brake',
    '--altitude',
    '210m',
    '--inertia',
    '0.12 kg·m²',
    ...book(),
  ]);
  expect(added.code).toBe(0);
  const instrument = ['cell', 'instrument', 'Cell 1', 'load cell', '--measures', 'torque', ...book()];
  expect((await capturedJson(instrument)).code).toBe(0);
  const calibration = ['cell', 'calibration', 'Cell 1', 'load cell', '--day', '2026-03-10', ...book()];
  expect((await capturedJson(calibration)).code).toBe(0);
  const { json } = await capturedJson(['cell', 'show', 'cell 1', ...book()]);
  expect(json).toMatchObject({ altitudeM: 210, momentOfInertiaKgM2: 0.12, pulls: 1 });
  expect(json.instruments[0].calibrations).toMatchObject([{ day: '2026-03-10', validUntil: null }]);
  expect((await captured(['cell', 'show', 'Cell 1', ...book()])).out).toContain('210 m');
  expect((await captured(['cell', 'change', 'Cell 1', '--name', 'Cell one', ...book()])).code).toBe(0);
  expect((await capturedJson(['cell', 'show', 'Cell one', ...book()])).json.pulls).toBe(1);
});

test('who may see: set, shown, and a still of it leaves the shop only when it is asked for so', async () => {
  const demo = at('demo');
  expect((await captured(['demo', '--book', demo])).code).toBe(0);
  const { json: listed } = await capturedJson(['list', 'trials', '--book', demo]);
  const [trial] = listed.trials;
  const answer = ['--kind', 'still', '--picture', 'answer', '--format', 'svg'];
  const publish = ['publish', trial.id, ...answer, '--out', at('stills'), '--book', demo];
  const open = await capturedJson(publish);
  expect(open.code).toBe(0);
  const { path } = open.json.files[0];
  const who = ['audience', trial.id, '--who', 'customer', '--not-before', '9000-05-03', '--book', demo];
  expect((await captured(who)).out).toContain('the customer whose engine it is, not before 3 May 9000');
  const refused = await capturedJson(publish);
  expect(refused.code).toBe(1);
  expect(refused.json.error.code).toBe('not-for-everyone');
  expect(refused.json.error.message).toContain('--private-too');
  const { readFile } = await import('node:fs/promises');
  expect(await readFile(path, 'utf8')).not.toContain('Not for publication');
  expect((await captured([...publish, '--private-too'])).code).toBe(0);
  expect(await readFile(path, 'utf8')).toContain('Not for publication');
}, 90_000);

test('figures and predictions: kept before the pull, refused after it, in the ledger', async () => {
  const demo = ['--book', at('demo')];
  expect((await captured(['demo', ...demo])).code).toBe(0);
  const question = 'What would the longer cam make without the supercharger?';
  const band = ['--peak-power', '345hp', '--low', '335hp', '--high', '355hp', '--basis', 'a guess'];
  const kept = await capturedJson(['predict', '--trial', question, '--key', 'A', ...band, ...demo]);
  expect(kept.code).toBe(0);
  // 345 hp of 0.7456998716 kW.
  expect(kept.json).toMatchObject({ key: 'A', what: 'peakPower', gainPercent: null, inside: null });
  expect(kept.json.peakPowerKw).toBeCloseTo(257.2664557, 6);
  const late = await capturedJson(['predict', '--trial', question, '--key', 'B', ...band, ...demo]);
  expect(late.code).toBe(1);
  expect(late.json.error.message).toContain('no prediction');
  const figures = await capturedJson(['figures', ...demo]);
  expect(figures.json).toMatchObject({ schemaVersion: 1, pullsNotRead: 0, predictionsMeasured: 3 });
  expect(figures.json.predictions[0]).toMatchObject({ question, basis: 'a guess', inside: null });
  expect(figures.json.repeatability.map(({ induction }: { induction: string }) => induction)).toContain(
    'supercharged',
  );
  const { out } = await captured(['figures', ...demo]);
  expect(out).toContain('How far one pull lies from the next');
  expect(out).toContain('Peak power 345 hp (335 hp to 355 hp): not measured yet');
});
