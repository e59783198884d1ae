import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { captured, capturedJson } from './testing/captured.ts';

const QUESTION = 'What does the longer cam add at the same pulley?';
let folder = '';
const argv = (...more: string[]): string[] => [
  'plan',
  '--trial',
  QUESTION,
  ...more,
  '--book',
  join(folder, 'book'),
];

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-plan-'));
  await captured(['demo', '--book', join(folder, 'book')]);
}, 60_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

test('pulls in order, and what they let be seen', async () => {
  const { code, json } = await capturedJson(argv('--gain', '5%'));
  expect(code).toBe(0);
  expect(json.pulls.map((one: { order: number }) => one.order)).toEqual(
    json.pulls.map((_: unknown, place: number) => place + 1),
  );
  for (const { combination } of json.pulls) expect(['A', 'B']).toContain(combination);
  expect(json.smallestDifferencePercent).toBeLessThanOrEqual(5);
  expect(json.smallestDifferencePercent).toBeGreaterThan(json.floorPercent);
  expect(json.smallestDifferenceKw).toBeCloseTo((json.smallestDifferencePercent * json.baselineKw) / 100, 9);
  expect(json.whatIsMade.smallestDifferencePercent).toBeGreaterThan(json.smallestDifferencePercent);
  expect(json.stopCriteria.map((one: { id: string }) => one.id)).toContain('oil-pressure');
  expect(json.planningAid).toContain('Nobody in the cell during a pull.');
});

test('a larger gain takes no more hours than a smaller one', async () => {
  const hours: number[] = [];
  for (const gain of ['4%', '6%', '10%']) hours.push((await capturedJson(argv('--gain', gain))).json.hours);
  expect(hours).toEqual(hours.toSorted((one, other) => other - one));
});

test('notes are kept with the plan and printed on its sheet; without --keep they are refused', async () => {
  const file = join(folder, 'noted.html');
  const kept = await capturedJson(argv('--gain', '5%', '--keep', '--notes', 'oil first', '--sheet', file));
  expect(kept.json.kept.notes).toBe('oil first');
  expect(await readFile(file, 'utf8')).toContain('<strong>Notes:</strong> oil first');
  expect((await captured(argv('--gain', '4%', '--keep'))).out).toContain('Notes: oil first');
  const refused = await captured(argv('--notes', 'lost'));
  expect(refused.code).not.toBe(0);
  expect(refused.err).toContain('Give --keep with --notes');
  await captured(argv('--forget'));
});

test('kept with its sheet, shown, forgotten', async () => {
  const file = join(folder, 'sheet.html');
  const { out } = await captured(argv('--gain', '5%', '--keep', '--sheet', file, '--paper', 'a4'));
  expect(out).toContain('Kept plan: 3 of');
  const html = await readFile(file, 'utf8');
  expect(html).toContain('size: A4 portrait');
  expect(html).not.toMatch(/(?:src|href)=/);
  expect((await capturedJson(argv())).json.gainPercent).toBeCloseTo(5, 9);
  expect((await captured(argv('--forget'))).code).toBe(0);
  expect((await capturedJson(argv())).json.kept).toBeNull();
});

test.each([
  [['--gain', '0%'], /0\.1 % to 50 %/],
  [['--gain', '5%', '--odds', '1'], /0\.5 to 0\.99/],
  [['--forget', '--keep'], /--forget alone/],
])('%j is refused with what is accepted', async (more, words) => {
  const { code, err } = await captured(argv(...more));
  expect(code).not.toBe(0);
  expect(err).toMatch(words);
});
