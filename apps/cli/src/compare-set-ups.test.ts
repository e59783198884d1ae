import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { capturedJson } from './testing/captured.ts';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-cli-set-ups-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

test('one combination fitted twice: the scatter of taking apart is in the band, of one fitting it is not', async () => {
  const book = ['--book', join(folder, 'book')];
  expect((await capturedJson(['demo', ...book])).code).toBe(0);
  const width = async () => {
    const noise = ['--noise', '0.5%', '--noise-degrees-of-freedom', '200', '--set-up-noise', '0.5%'];
    const sides = ['--baseline', 'Pull 4', '--changed', 'Pull 5'];
    const { json } = await capturedJson(['compare', ...sides, ...noise, ...book]);
    return json.meanGainHighKw - json.meanGainLowKw;
  };
  const once = await width();
  const amended = ['amend', 'Pull 5', '--set-up', 'second fitting', '--reason', 'fitted again', ...book];
  expect((await capturedJson(amended)).code).toBe(0);
  // Variance of two pulls and two set-ups over that of two pulls, all of one size and known well: twice.
  expect((await width()) / once).toBeCloseTo(Math.SQRT2, 1);
});
