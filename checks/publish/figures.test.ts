import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { makeDemoBook } from '@pullbook/workshop';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { capturedJson } from '../../apps/cli/src/testing/captured.ts';
import { type Held, heldCurves, lettersOf, PER_KW } from './held-curves.ts';
import { heldClaim, heldPeaks, heldRows } from './held-words.ts';
import { addTrials, randomTrial } from './random-book.ts';
import { publishedFiles, shownOf } from './read-files.ts';

/**
 * What a published file says, read from the file alone, against what the command line answers of the trial (`show --json`): of the
 * demo's trials, and of seeded books of invented engines.
 */
const folder = mkdtempSync(join(tmpdir(), 'pullbook-figures-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const BOOKS = [
  { name: 'demo', path: join(folder, 'demo'), trials: [] as string[] },
  { name: 'random', path: join(folder, 'random', 'book'), trials: [] as string[] },
];

beforeAll(async () => {
  const [demo, random] = BOOKS as [(typeof BOOKS)[0], (typeof BOOKS)[0]];
  await makeDemoBook(demo.path);
  const { json } = await capturedJson(['list', 'trials', '--book', demo.path]);
  demo.trials = json.trials.map(({ id }: { id: string }) => id);
  const trials = fc.sample(randomTrial, { seed: 61, numRuns: 6 }).map((trial, place) => ({
    ...trial,
    isSurvey: false,
    // A band is drawn where there is one gain.
    changes: trial.changes.slice(0, place < 3 ? 1 : 3),
  }));
  random.trials = await addTrials(join(folder, 'random'), trials);
}, 120_000);

describe.each(BOOKS)('$name', (book) => {
  test('every file carries the figures that the command line answers, to the last digit', async () => {
    let comparisons = 0;
    for (const [place, trial] of book.trials.slice(0, 3).entries()) {
      const shown = await shownOf(book.path, trial);
      comparisons += shown.length;
      // Pixels, pages and reports take the longest and carry one and the same block.
      const formats = place === 0 ? ['html', 'pdf', 'pdf', 'png', 'svg'] : ['svg'];
      const kinds = ['--kind', place === 0 ? 'still,report' : 'still', '--picture', 'answer'];
      const more = [...kinds, '--format', [...new Set(formats)].join()];
      const files = await publishedFiles(book.path, trial, join(folder, 'carried', trial), ...more);
      expect(files.map(({ name }) => name.split('.').at(-1)).sort()).toEqual(formats);
      const wanted = shown.map((one) => {
        const { conditions: _, remarks: __, ...figures } = one as typeof one & Record<string, unknown>;
        return figures;
      });
      for (const { name, numbers } of files) {
        expect(
          numbers.comparisons.map(({ key: _, ...one }) => one),
          name,
        ).toEqual(wanted);
        for (const [index, { key }] of numbers.comparisons.entries()) {
          const own = numbers.combinations.find((one) => one.key === key);
          expect(own?.peakPowerKw, name).toBe(shown[index]!.changedPeak.peakPowerKw);
        }
      }
    }
    expect(comparisons).toBeGreaterThan(1);
  }, 120_000);

  test.each([
    ['us', '.', '1080p'],
    ['si', ',', 'square'],
  ] as const)(
    'curves, tables and words of the set say the same, %s',
    async (units, mark, size) => {
      const sums = { power: 0, torque: 0, gain: 0, band: 0, boost: 0, rows: 0, peaks: 0, claims: 0 };
      const add = (held: Partial<typeof sums>) => {
        for (const [what, count] of Object.entries(held)) sums[what as keyof typeof sums] += count;
      };
      const perKw = PER_KW[units === 'us' ? 'hp' : 'kW']!;
      for (const trial of book.trials) {
        if ((await shownOf(book.path, trial)).length === 0) continue;
        const more = [
          '--kind',
          'still',
          '--format',
          'svg',
          '--size',
          size,
          '--units',
          units,
          '--decimal',
          mark,
        ];
        const set = await publishedFiles(book.path, trial, join(folder, 'drawn', trial), ...more);
        const stacks = set.filter(
          ({ svg, name }) => svg.includes('class="bands"') && !/-thumbnail-/u.test(name),
        );
        const letters = lettersOf(stacks, mark);
        for (const file of stacks) {
          const { wrong, held }: Held = heldCurves(file, letters, mark);
          expect(wrong).toEqual([]);
          add(held);
        }
        for (const file of set) {
          const words =
            (/-table-(?:[b-h]-)?\d/u.test(file.name) && { rows: heldRows(file, mark, perKw) }) ||
            (/-power-\d/u.test(file.name) && { peaks: heldPeaks(file, mark, perKw) }) ||
            (/-answer-\d/u.test(file.name) && { claims: heldClaim(file, mark, perKw) }) ||
            {};
          for (const [what, { wrong, held }] of Object.entries(words)) {
            expect(wrong).toEqual([]);
            add({ [what]: held });
          }
        }
      }
      // Otherwise something was not put to the test.
      const least = { power: 500, torque: 300, gain: 200, band: 60, boost: 3, rows: 40, peaks: 6, claims: 1 };
      for (const [what, count] of Object.entries(least))
        expect(sums[what as keyof typeof sums], what).toBeGreaterThanOrEqual(count);
    },
    120_000,
  );
});

test('a curve a pixel off, an axis of other figures, swapped names are seen', async () => {
  const { path, trials } = BOOKS[0]!;
  const more = ['--kind', 'still', '--picture', 'power,gain', '--format', 'svg'];
  const files = await publishedFiles(path, trials.at(-1)!, join(folder, 'spoiled'), ...more);
  const [power, gain] = files.map((file) => ({ file, letters: lettersOf([file], '.') }));
  const wrongIn = ({ file, letters }: NonNullable<typeof power>, spoil: (svg: string) => string) =>
    heldCurves({ ...file, svg: spoil(file.svg) }, letters, '.').wrong;
  const swapped = new Map([...power!.letters].map(([colour, key]) => [colour, key === 'A' ? 'B' : 'A']));
  expect(wrongIn(power!, (svg) => svg)).toEqual([]);
  expect(wrongIn(gain!, (svg) => svg)).toEqual([]);
  // The last path is a mean's; a point in its middle is moved.
  const raised = (svg: string) =>
    svg.replace(
      /(.*<path d="M(?:[\d.]+,[\d.]+L){30}[\d.]+,)([\d.]+)/su,
      (_, before: string, y: string) => `${before}${(Number(y) - 1).toFixed(1)}`,
    );
  expect(wrongIn(gain!, raised)).toHaveLength(1);
  expect(wrongIn(power!, (svg) => svg.replaceAll('>200<', '>201<'))[0]).toContain('ticks off');
  expect(wrongIn({ ...power!, letters: swapped }, (svg) => svg).length).toBeGreaterThan(10);
}, 60_000);
