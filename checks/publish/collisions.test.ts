import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { STILL_SIZES, type StillSizeName } from '@pullbook/charts';
import { stillSvg } from '@pullbook/publish';
import { stillSet } from '@pullbook/views/publish';
import { answerCard } from '@pullbook/views/reach';
import { makeDemoBook } from '@pullbook/workshop';
import fc from 'fast-check';
import { afterAll, describe, expect, test } from 'vitest';
import { capturedJson } from '../../apps/cli/src/testing/captured.ts';
import { oddTrials } from '../../packages/views/src/publish/odd-trials.test-support.ts';
import { oddAnswers } from '../../packages/views/src/reach/odd-answers.test-support.ts';
import { addTrials, randomTrial } from './random-book.ts';
import { allOf, numberOf, readSvg } from './read-svg.ts';
import { inkOf, onOneAnother, outside } from './text-places.ts';

/**
 * Texts of whole sets, measured in the file by fontkit and the shipped fonts: none on another, none out of the picture, none smaller than
 * its size of picture allows.
 */
const folder = mkdtempSync(join(tmpdir(), 'pullbook-collisions-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** px; common practice, no source: 3 % of a wide picture, 48 and 40 of 1080 on a telephone, 12 of 360 for a thumbnail. */
const LEAST: Record<StillSizeName, number> = {
  '1080p': 32,
  '4k': 64,
  tall: 48,
  square: 40,
  thumbnail: 12 * (1280 / 360),
};
const sizeOf = (width: number, height: number): StillSizeName =>
  (Object.keys(STILL_SIZES) as StillSizeName[]).find(
    (name) => STILL_SIZES[name].width === width && STILL_SIZES[name].height === height,
  )!;

const met = { pictures: 0, measured: 0, unmeasured: 0 };

/** What is wrong with a picture. */
function wrongIn(svg: string): string[] {
  const picture = readSvg(svg);
  const [width, height] = [numberOf(picture, 'width'), numberOf(picture, 'height')];
  const least = LEAST[sizeOf(width, height)];
  const texts = allOf(picture).filter(({ tag }) => tag === 'text');
  const places = texts.flatMap((text) => inkOf(text) ?? []);
  met.pictures += 1;
  met.measured += places.length;
  met.unmeasured += texts.length - places.length;
  const small = texts.filter((text) => numberOf(text, 'font-size') < least - 0.01);
  return [
    ...onOneAnother(places),
    ...outside(places, width, height),
    ...small.map(({ text }) => `"${text}" is too small`),
  ];
}

async function wrongInBook(book: string, ...more: string[]): Promise<Record<string, string[]>> {
  const { json: listed } = await capturedJson(['list', 'trials', '--book', book]);
  const wrong: Record<string, string[]> = {};
  for (const { id } of listed.trials as { id: string }[]) {
    const argv = ['publish', id, '--draft', '--kind', 'still', '--format', 'svg', '--out', join(folder, id)];
    const { code, json } = await capturedJson([...argv, '--book', book, ...more]);
    expect(code).toBe(0);
    for (const { path } of json.files as { path: string }[]) {
      const found = wrongIn(readFileSync(path, 'utf8'));
      if (found.length > 0) wrong[path] = found;
    }
  }
  return wrong;
}

test('the measure sees a word that is moved onto another, out of the picture, or made smaller', () => {
  const svg = stillSvg(
    stillSet(fc.sample(oddTrials, { seed: 21, numRuns: 1 })[0]!, { units: 'us', decimalMark: '.' }, null)[0]!
      .still,
    { ...STILL_SIZES['1080p'], theme: 'light', ground: true },
  );
  const [first, second] = svg.matchAll(/<text x="([\d.]+)" y="([\d.]+)"/gu);
  expect(wrongIn(svg)).toEqual([]);
  expect(wrongIn(svg.replace(first![0], second![0]))).toEqual([expect.stringContaining('" on "')]);
  expect(wrongIn(svg.replace(first![0], '<text x="1900" y="40"'))).toEqual([
    expect.stringContaining('leaves the picture'),
  ]);
  expect(wrongIn(svg.replace(/font-size="[\d.]+"/u, 'font-size="31"'))).toEqual([
    expect.stringContaining('too small'),
  ]);
});

describe('no text lies on another, leaves the picture or is too small', () => {
  test('the demo, in every size, in both themes', async () => {
    await makeDemoBook(join(folder, 'demo'));
    expect(await wrongInBook(join(folder, 'demo'), '--size', '1080p,tall,square')).toEqual({});
    // That a theme changes colours only is a test of its own in `packages/charts`.
    expect(await wrongInBook(join(folder, 'demo'), '--size', '4k', '--theme', 'dark')).toEqual({});
    expect(met.pictures).toBeGreaterThan(150);
  }, 120_000);

  test('a book of invented engines: eight combinations, several scripts, surveys, curves on one another', async () => {
    const trials = fc.sample(randomTrial, { seed: 67, numRuns: 4 });
    expect(Math.max(...trials.map(({ changes }) => changes.length))).toBe(7);
    expect(new Set(trials.map(({ isSurvey }) => isSurvey)).size).toBe(2);
    await addTrials(join(folder, 'random'), trials);
    const more = ['--size', '1080p,tall,square', '--units', 'si', '--decimal', ','];
    expect(await wrongInBook(join(folder, 'random', 'book'), ...more)).toEqual({});
  }, 120_000);

  test('40 odd trials: none to ten combinations, no pull, gains of nought, names of 200 signs; every second picture in one size', () => {
    const sizes = ['1080p', 'square', 'tall'] as const;
    for (const [index, answer] of fc.sample(oddTrials, { seed: 21, numRuns: 40 }).entries()) {
      const set = stillSet(answer, { units: 'us', decimalMark: '.' }, null);
      for (const [place, { name, key, still }] of set.entries()) {
        if ((index + place) % 2 === 1) continue;
        const size = name === 'thumbnail' ? 'thumbnail' : sizes[(index + place) % sizes.length]!;
        const svg = stillSvg(still, { ...STILL_SIZES[size], theme: 'light', ground: true });
        expect(wrongIn(svg), `trial ${index}: ${name} ${key}, ${size}`).toEqual([]);
      }
    }
    // Signs that the shipped fonts have not are measured in a browser.
    expect(met.measured).toBeGreaterThan(20 * met.unmeasured);
  }, 60_000);

  test('answers to a target: no way to it, one of many changes, names of 200 signs, in words and in curves', () => {
    const before = met.pictures;
    for (const [index, kept] of oddAnswers().entries())
      for (const shows of ['words', 'curves'] as const)
        for (const size of ['1080p', 'square', 'tall'] as const) {
          const still = answerCard(kept, { units: 'us', decimalMark: '.' }, null, { shows });
          const svg = stillSvg(still, { ...STILL_SIZES[size], theme: 'light', ground: true });
          expect(wrongIn(svg), `answer ${index}: ${shows}, ${size}`).toEqual([]);
          expect(svg, `answer ${index}: ${shows}, ${size}`).toContain('Computed, not measured');
        }
    expect(met.pictures - before).toBeGreaterThan(20);
  }, 30_000);
});
