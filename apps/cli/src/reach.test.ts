import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { captured, capturedJson } from './testing/captured.ts';

const samples = join(dirname(fileURLToPath(import.meta.url)), '..', '..', '..', 'samples');
const rated = join(samples, 'match', 'rated-point.yaml');
const BASE = 'Supercharged, base cam';
/** One change is enough for a test, and quick. */
const QUICK = ['--most-changes', '1', '--draws', '100'];

let folder = '';
let book = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-reach-cli-'));
  book = join(folder, 'demo');
  await captured(['demo', '--book', book]);
}, 60_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

describe('pullbook reach of a match file', () => {
  test('--json: the ladder with bands, chance, what binds first, and what is left', async () => {
    const { code, json } = await capturedJson([
      'reach',
      rated,
      '--power',
      '305hp',
      '--boost-cap',
      '10psi',
      ...QUICK,
    ]);
    expect(code).toBe(0);
    expect(json).toMatchObject({
      schemaVersion: 1,
      feasible: true,
      standard: 'observed',
      factor: 1,
      leastRemedy: null,
      reason: null,
    });
    // 305 hp at 745.699 871 58 W
    expect(json.target.powerKw).toBeCloseTo(305 * 0.745_699_871_58, 6);
    expect(json.rungs.length).toBeGreaterThan(0);
    const costs = json.rungs
      .filter(({ reaches }: { reaches: boolean }) => reaches)
      .map(({ costTotal }: { costTotal: number }) => costTotal);
    expect(costs).toEqual(costs.toSorted((a: number, b: number) => a - b));
    for (const rung of json.rungs) {
      expect(rung.peakPowerLowKw).toBeLessThan(rung.peakPowerKw);
      expect(rung.peakPowerHighKw).toBeGreaterThan(rung.peakPowerKw);
      expect(rung.chance).toBeGreaterThanOrEqual(0);
      expect(rung.changes[0]).toHaveProperty('edits');
      expect(['measured by you', 'scaled from your data', 'rule of thumb']).toContain(rung.changes[0].ground);
      const { limit, value, threshold, marginPercent, unit } = rung.bindsFirst;
      expect([typeof limit, typeof value, typeof threshold, typeof unit]).toEqual([
        'string',
        'number',
        'number',
        'string',
      ]);
      expect(marginPercent).toBe(
        Math.min(
          ...rung.findings
            .filter((one: { binds: boolean }) => one.binds)
            .map((one: { marginPercent: number }) => one.marginPercent),
        ),
      );
      expect(rung.highestBoostKpa).toBeLessThanOrEqual(10 * 6.894_757_3);
    }
    expect(json.whatIsLeft[0]).toMatchObject({ stoppedBy: { limit: expect.any(String) } });
    expect(json.cautions.length).toBeGreaterThan(0);
  });

  test('a way written as a match file is run by pullbook match with the same power', async () => {
    const out = join(folder, 'way.yaml');
    const csv = join(folder, 'ways.csv');
    const asked = await capturedJson([
      'reach',
      rated,
      '--power',
      '305hp',
      ...QUICK,
      '--rung',
      '1',
      '--out',
      out,
      '--csv',
      csv,
    ]);
    expect(asked.json).toMatchObject({ out, csv });
    const matched = await capturedJson(['match', out]);
    const peak = Math.max(
      ...matched.json.points.map(({ brakePowerKw }: { brakePowerKw: number }) => brakePowerKw),
    );
    expect(peak / asked.json.rungs[0].peakPowerObservedKw).toBeCloseTo(1, 6);
    expect((await readFile(csv, 'utf8')).split('\n')[0]).toMatch(/^rung,changes,engineSpeedRpm,powerKw/);
  });

  test('for a person: the answer, the ladder, the way laid open, what is left, the cautions', async () => {
    const { code, out } = await captured(['reach', join(samples, 'reach', 'out-of-reach.yaml'), ...QUICK]);
    expect(code).toBe(0);
    for (const words of [
      '420 hp is out of reach',
      'Ladder, cheapest first',
      'Why not',
      'What is left',
      'planning aid',
    ])
      expect(out).toContain(words);
  });

  test('--left needs no power', async () => {
    const { json } = await capturedJson(['reach', rated, '--left', ...QUICK]);
    expect(json).not.toHaveProperty('rungs');
    expect(json.whatIsLeft[0].overallRatio).toBeGreaterThan(0);
  });

  test.each([
    [['reach'], 'reach-of-what'],
    [['reach', rated, '--combination', BASE, '--power', '300hp'], 'reach-of-what'],
    [['reach', '--combination', BASE], 'reach-without-power'],
    [['reach', rated, '--power', '300hp', '--keep'], 'keep-of-file'],
    [['reach', rated, '--power', '305hp', '--out', 'x.yaml'], 'out-without-rung'],
    [['reach', rated, '--power', '305', ...QUICK], 'missing-unit'],
    [['reach', rated, '--power', '200hp', ...QUICK], 'target-below-now'],
    [['reach', rated, '--power', '30000hp', ...QUICK], 'target-far-above-now'],
    [['reach', rated, '--power', '305hp', '--rung', '40', ...QUICK], 'rung-not-there'],
    [['reach', join(samples, 'reach', 'invalid-unit.yaml')], 'unit-missing'],
  ])('%j is refused: %s', async (words, code) => {
    const { code: exit, json } = await capturedJson(words);
    expect(exit).toBeGreaterThan(0);
    expect(json.error.code).toBe(code);
    expect(json.error.message.length).toBeGreaterThan(30);
  });
});

describe('pullbook reach of the book', () => {
  test('520 hp of the demo engine: measured now, near pulls, kept, and found again', async () => {
    const { json } = await capturedJson([
      'reach',
      '--combination',
      BASE,
      '--power',
      '520hp',
      ...QUICK,
      '--keep',
      '--book',
      book,
    ]);
    expect(json.measuredNow.pullIds).toHaveLength(3);
    const [first] = json.rungs;
    expect(first.nearest.map(({ side }: { side: string }) => side)).toContain('above');
    expect(first.nearest[0].separates.length).toBeGreaterThan(0);
    const kept = await capturedJson(['enquiry', 'show', json.kept, '--book', book]);
    expect(kept.json.rungs.map(({ id }: { id: string }) => id)).toEqual(
      json.rungs.map(({ id }: { id: string }) => id),
    );
    expect(kept.json.rungs[0].peakPowerKw).toBe(first.peakPowerKw);
  });
});

describe('pullbook parts', () => {
  const ofBook = (...words: string[]) => capturedJson(['parts', ...words, '--book', book]);

  test('exported, edited, imported, shown, reset', async () => {
    const file = join(folder, 'parts.yaml');
    expect((await ofBook('export', file)).json).toMatchObject({ file, isOwn: false });
    const text = await readFile(file, 'utf8');
    await writeFile(file, text.replace('{ diameter: 78 mm, cost: 1,', '{ diameter: 79 mm, cost: 2,'));
    expect((await ofBook('import', file)).json.isOwn).toBe(true);
    const { json } = await ofBook('show');
    expect(json.parts.blowerPulleys).toContainEqual({
      diameter: '79 mm',
      cost: 2,
      source: 'common practice, no source',
    });
    const people = await captured(['parts', 'show', '--book', book]);
    expect(people.out).toContain('The shop’s own parts list');
    expect((await captured(['settings', '--book', book])).out).toContain('own: pullbook parts show');
    expect((await ofBook('reset')).json.isOwn).toBe(false);
  });

  test('a bad file changes nothing and says its line', async () => {
    const before = (await ofBook('show')).json;
    const { code, json } = await ofBook('import', join(samples, 'reach', 'invalid-parts-fuel.yaml'));
    expect(code).toBeGreaterThan(0);
    expect(json.error.remarks[0]).toMatchObject({ line: 10 });
    expect((await ofBook('show')).json).toEqual(before);
  });
});
