import { mkdir, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openBook } from '@pullbook/store';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { makeDemoBook } from './demo-book.ts';
import { keptPredictions } from './predictions.ts';
import { publicationsPage } from './publish/publications.ts';
import { trialCards } from './trial-pages.ts';

let parent = '';
beforeAll(async () => {
  parent = await mkdtemp(join(tmpdir(), 'pullbook-demo-'));
});
afterAll(() => rm(parent, { recursive: true, force: true }));

test('the demo book is whole, invented throughout, and made once; what a killed maker left is swept', async () => {
  const folder = join(parent, 'demo');
  // No process has this id: the largest that Linux allows is 4,194,304.
  const leftover = `${folder}.part-99999999`;
  await mkdir(leftover);
  await writeFile(join(leftover, 'half'), '');
  await makeDemoBook(folder);
  expect(await readdir(parent)).toEqual(['demo']);

  const book = await openBook(folder);
  const { id } = await book.info();
  const contents = await book.contents();
  expect(contents.info.invented).toBe(true);
  for (const things of [
    contents.engines,
    contents.combinations,
    contents.packages,
    contents.pulls,
    contents.trials,
  ]) {
    expect(things.length).toBeGreaterThan(0);
    expect(things.every((one) => one.invented)).toBe(true);
  }
  const kept = await keptPredictions(book);
  expect(kept.map(({ inside }) => String(inside)).sort()).toEqual(['false', 'null', 'true', 'true']);
  const { rows: cards } = await trialCards(book, { units: 'us', decimalMark: '.' });
  expect(cards).toHaveLength(4);
  expect(cards.filter((card) => card.chips.some((chip) => chip.text === 'No baseline'))).toHaveLength(1);
  // The first page opens with an answer, not with what was never measured.
  expect(cards[0]!.sentence.some((part) => part.strong)).toBe(true);
  expect(cards[0]!.question).toBe('What does the longer cam add at the same pulley?');
  const published = await publicationsPage(book, { units: 'us', decimalMark: '.' });
  const [still, ...others] = published.ok ? published.value : [];
  expect(others).toEqual([]);
  const gain = still!.stale.find(({ label }) => label === 'B, gain in average power')!;
  // SAE J1349 by hand, 1.18 x 99 / dry kPa x (297.25 / 298)^0.5 - 0.18: 1.041 at 96.8 kPa and 41 % of 3.0 kPa of vapour,
  // 1.016 at 98.8 kPa; one pull of three, of some 409 hp.
  expect(Number.parseFloat(gain.said) - Number.parseFloat(gain.now!)).toBeCloseTo(
    (409 * (1.041 / 1.016 - 1)) / 3,
    0,
  );
  await book.close();

  await makeDemoBook(folder);
  const again = await openBook(folder);
  expect((await again.info()).id).toBe(id);
  await again.close();
});
