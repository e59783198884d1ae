import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { captured, capturedJson } from './testing/captured.ts';

let folder = '';
const book = (): string[] => ['--book', join(folder, 'book')];
const CAM = 'What does the longer cam add at the same pulley?';

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-cli-why-'));
  expect((await captured(['demo', ...book()])).code).toBe(0);
}, 120_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

async function camTrial(): Promise<string> {
  const { json } = await capturedJson(['list', 'trials', ...book()]);
  const found = JSON.stringify(json).match(/"id":"([^"]+)","question":"What does the longer cam add/u);
  return found![1]!;
}

// The demo's generator knows nothing of stories: it lowers boost and raises power and fuel under a longer cam, the drive
// untouched and the shaft speed not logged.
test('a trial says why, what is not excluded, what would settle it, and its badges', async () => {
  const { json } = await capturedJson(['show', await camTrial(), ...book()]);
  const [why] = json.page.why;
  expect(json.page.question).toBe(CAM);
  expect(why.likeliest).toBe('breathes-better');
  expect(why.notExcluded.map(({ id }: { id: string }) => id)).toEqual(['belt-slip']);
  expect(why.wouldSettle).toContain('shaft-speed pick-up');
  const earned = json.page.badges.filter((one: { earned: boolean }) => one.earned);
  expect(earned.map(({ id }: { id: string }) => id)).toEqual([
    'repeats',
    'same-day',
    'same-standard',
    'conditions-shown',
    'one-change',
  ]);
  const { out } = await captured(['show', await camTrial(), ...book()]);
  expect(out).toMatch(/Likeliest: The engine breathes better/u);
  expect(out).toMatch(/not earned {2}Like for like: Differs: Oil at the start/u);
}, 60_000);

test('so does a comparison of the same pulls without a trial', async () => {
  const sides = ['--baseline', 'Pull 4,Pull 5,Pull 7', '--changed', 'Pull 8,Pull 9', '--window', '4000-6500'];
  const { code, json } = await capturedJson(['compare', ...sides, ...book()]);
  expect(code).toBe(0);
  expect(json.explanation.likeliest).toBe('breathes-better');
  expect(json.badges.find(({ id }: { id: string }) => id === 'one-change').earned).toBe(true);
  const cam = json.conditions.find(({ id }: { id: string }) => id === 'parts-cam');
  expect(cam).toMatchObject({ name: 'Cam', state: 'differs' });
  expect(cam.rule).toContain('common practice, no source');
}, 60_000);

test('a fuel batch is written down, compared and cleared', async () => {
  const amend = async (...options: string[]) =>
    (await captured(['amend', 'Pull 8', ...options, '--reason', 'from the day sheet', ...book()])).code;
  const batch = async () => {
    const sides = ['--baseline', 'Pull 7', '--changed', 'Pull 8'];
    const { json } = await capturedJson(['compare', ...sides, ...book()]);
    return json.conditions.find(({ id }: { id: string }) => id === 'fuel-batch');
  };
  expect(await batch()).toBeUndefined();
  expect(await amend('--fuel-batch', 'drum 4')).toBe(0);
  expect(await batch()).toMatchObject({ changed: 'drum 4', baseline: 'not noted', state: 'unknown' });
  expect(await amend('--clear', 'fuel-batch')).toBe(0);
  expect(await batch()).toBeUndefined();
}, 60_000);
