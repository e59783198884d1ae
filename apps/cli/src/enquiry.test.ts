import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { keepEnquiry, openBook } from '@pullbook/workshop';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { captured, capturedJson } from './testing/captured.ts';

let folder = '';
let book: string[] = [];
let id = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-enquiry-cli-'));
  book = ['--book', join(folder, 'demo')];
  await captured(['demo', ...book]);
  const opened = await openBook(join(folder, 'demo'), { create: null });
  // Little is searched and few draws are made: the search is tested where it is written.
  const kept = await keepEnquiry(opened, 'Supercharged, base cam', {
    power: '500 hp',
    without: ['fuel', 'cooler', 'supercharger', 'stepUp', 'breathing', 'speedLimit'],
    mostChanges: 1,
    draws: 40,
  });
  await opened.close();
  if (!kept.ok) throw new Error(kept.remarks[0]!.message);
  id = kept.value.id;
}, 60_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

test('what was asked is listed and found, for people and as JSON', async () => {
  const people = await captured(['enquiries', ...book]);
  expect(people.out).toContain(`${id.slice(0, 8)}  How do I make 500 hp with “Supercharged, base cam”`);
  const { json } = await capturedJson(['enquiries', '--find', 'pulley 500', ...book]);
  expect(json).toMatchObject({ schemaVersion: 1, total: 1, all: 1, enquiries: [{ id }] });
  expect(json.enquiries[0].answer).toMatch(/^500\s?hp is reached/u);
  expect((await captured(['enquiries', '--find', 'nothing', ...book])).out).toContain(
    'Nothing that was asked fits',
  );
  const { json: listing } = await capturedJson(['list', 'enquiries', ...book]);
  expect(listing).toMatchObject({ book: { counts: { enquiries: 1 } }, enquiries: [{ id }] });
});

test('it is shown as it was given, under its own command and by show', async () => {
  const { json } = await capturedJson(['enquiry', 'show', id.slice(0, 6), ...book]);
  expect(json).toMatchObject({
    schemaVersion: 1,
    id,
    feasible: true,
    became: [],
    cards: [],
    asked: { power: '500 hp' },
  });
  expect(json.target.powerKw).toBeCloseTo(372.85, 1);
  const people = await captured(['enquiry', 'show', id, '--rung', '1', ...book]);
  for (const words of ['Ladder', 'Way 1:', 'Impeller speed', 'What is left'])
    expect(people.out).toContain(words);
  expect((await captured(['show', id.slice(0, 8), ...book])).out).toContain('Ladder');
  const missing = await capturedJson(['enquiry', 'show', 'zzzz', ...book]);
  expect([missing.code, missing.json.error.code]).toEqual([1, 'unknown-id']);
});

test('a rung becomes a trial, is told in the history, and is taken back', async () => {
  const { rungs } = (await capturedJson(['enquiry', 'show', id, ...book])).json;
  // The 80 mm pulley was pulled already.
  const isNew = ({ changes }: { changes: { text: string }[] }) => !changes[0]!.text.includes(' 80');
  const rung = `${1 + rungs.findIndex(isNew)}`;
  const { json } = await capturedJson(['enquiry', 'plan', id, rung, '--question', 'Is it enough?', ...book]);
  expect(json).toMatchObject({ enquiryId: id, trial: { question: 'Is it enough?' }, predictions: 2 });
  expect(json.pulls).toContain('B');
  expect((await captured(['show', 'Is it enough?', ...book])).out).toContain('Is it enough?');
  const again = await captured(['enquiry', 'plan', id, rung, ...book]);
  expect(again.err).toContain('became the trial "Is it enough?"');
  expect((await captured(['history', ...book])).out).toContain('Went on with the answer to');
  expect((await captured(['undo', ...book])).code).toBe(0);
  expect((await capturedJson(['enquiry', 'show', id, ...book])).json.became).toEqual([]);
});

test('a card is made in a folder and noted, and its figures are read back', async () => {
  const out = join(folder, 'cards');
  const argv = ['enquiry', 'card', id, '--out', out, '--format', 'svg', ...book];
  const { json } = await capturedJson(argv);
  expect(json).toMatchObject({ enquiryId: id, width: 1920, height: 1080, isNoted: true });
  expect(await readFile(json.path, 'utf8')).toContain('Computed, not measured');
  const shown = (await capturedJson(['enquiry', 'show', id, ...book])).json;
  expect(shown.cards).toHaveLength(1);
  const { json: read } = await capturedJson(['publish', '--numbers', json.path]);
  expect(read.numbers.rungs[0].peakPowerKw).toBe(shown.rungs[0].peakPowerKw);
  expect((await captured(['publish', '--numbers', json.path])).out).toContain('as it is');
  const vast = await captured(['enquiry', 'card', id, '--size', 'vast', '--out', out, ...book]);
  expect(vast.err).toContain('Accepted: 1080p');
});
