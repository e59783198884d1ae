import { readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { servedBook } from './testing/served-book.ts';

const samples = join(dirname(fileURLToPath(import.meta.url)), '..', '..', '..', 'samples');
const { ask } = servedBook('demo');

const SMALLER = `/api/trials/${encodeURIComponent('What does the smaller pulley add?')}/match`;

test('a bundle comes with all that the page needs, and its cases go back to be banded as they are', async () => {
  const answer = await ask('GET', SMALLER);
  expect(answer.statusCode).toBe(200);
  const bundle = answer.json();
  expect(bundle.combinations.map(({ key }: { key: string }) => key)).toEqual(['A', 'B']);
  const cases = bundle.combinations.map(({ input, spread }: { input: object; spread: object }) => ({
    input,
    spread,
  }));
  const bands = await ask('POST', '/api/match/bands', { cases, draws: 40, seed: 3 });
  expect(bands.json()).not.toHaveProperty('error');
  const made = bands.json();
  expect(made).toMatchObject({ draws: 40, seed: 3 });
  expect(made.cases).toHaveLength(2);
  const { low, high } = made.cases[1].brakePower;
  expect(low).toHaveLength(bundle.combinations[1].input.baseline.engineSpeedRpm.length);
  for (const [node, value] of low.entries()) expect(value).toBeLessThan(high[node]);
});

test('one combination, in other weather; half a weather is refused in words', async () => {
  const url = `/api/combinations/${encodeURIComponent('Supercharged, base cam')}/match`;
  const high = await ask('GET', `${url}?pressure=83kPa&temperature=30C`);
  expect(high.json().combinations[0].input.air.pressure).toBe(83_000);
  const half = await ask('GET', `${url}?pressure=83kPa`);
  expect(half.statusCode).toBe(400);
  expect(half.json().error.message).toContain('needs pressure and temperature');
});

test("a trial's page comes before the match that its reason rests on, then whole", async () => {
  const page = `/api/trials/${encodeURIComponent('What does the longer cam add at the same pulley?')}`;
  const early = await ask('GET', `${page}?early=1`);
  expect(early.json()).toMatchObject({ isWhole: false, why: [] });
  const whole = (await ask('GET', page)).json();
  expect(whole.isWhole).toBe(true);
  expect(whole.why[0].sentence).toContain('By the match');
  expect(whole.chart).toEqual(early.json().chart);
});

test('what is no match is refused, never computed', async () => {
  expect((await ask('GET', '/api/trials/nothing/match')).statusCode).toBe(404);
  const wrong = await ask('POST', '/api/match/bands', { cases: [{ input: {}, spread: [] }] });
  expect(wrong.statusCode).toBe(400);
  expect(wrong.json().error.code).toBe('wrong-shape');
  const { combinations } = (await ask('GET', SMALLER)).json();
  const [{ input, spread }] = combinations;
  const many = await ask('POST', '/api/match/bands', { cases: [{ input, spread }], draws: 1_000_000 });
  expect(many.statusCode).toBe(400);
});

test('a prediction is refused after the pull', async () => {
  const kept = await ask('POST', `${SMALLER}/keep`, { key: 'B' });
  expect(kept.statusCode).toBe(400);
  expect(kept.json().error.code).toBe('already-pulled');
});

test('maps: added from text, shown, given as a file, renamed on what was looked at', async () => {
  const text = await readFile(join(samples, 'maps', 'shop-blower.csv'), 'utf8');
  const added = await ask('POST', '/api/maps', { text, name: 'Own map' });
  expect(added.statusCode).toBe(201);
  const { id } = added.json();
  const page = await ask('GET', `/api/maps/${id}?units=si`);
  expect(page.json()).toMatchObject({ id });
  const { stamp } = page.json();
  const csv = await ask('GET', `/api/maps/${id}/csv`);
  expect(csv.headers['content-disposition']).toContain('Own map.csv');
  expect(csv.body).toContain('pressure ratio');
  const renamed = await ask('PATCH', `/api/maps/${id}`, {
    name: 'Renamed',
    reason: 'to tell it apart',
    stamp,
  });
  expect(renamed.json()).toMatchObject({ name: 'Renamed' });
  const stale = await ask('PATCH', `/api/maps/${id}`, { notes: 'late', reason: 'late', stamp });
  expect(stale.statusCode).toBe(409);
  expect((await ask('POST', '/api/maps', { text: 'no map' })).statusCode).toBe(400);
});
