import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launch } from './launch.ts';
import { type RunningPullbook, startPullbook } from './start.ts';
import { open, watchedPage } from './watched-page.ts';

let pullbook: RunningPullbook;
let browser: Browser;
let trial: string;

beforeAll(async () => {
  [pullbook, browser] = await Promise.all([startPullbook('demo'), launch()]);
  const { rows } = await (await fetch(`${pullbook.address}/api/trials`)).json();
  trial = `/trials/${rows.find(({ question }: { question: string }) => /longer cam add/.test(question)).id}`;
});
afterAll(async () => {
  await browser?.close();
  await pullbook?.stop();
});

/** `−0.3`, `+6.6` as numbers; words become no number. */
const signed = (text: string): number => Number(text.replace('−', '-'));

const verdict = (page: Page) => page.getByRole('region', { name: 'Verdict' });

test('a trial shows its verdict with its band, draws the band, and says what may be said and what not', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, trial);
  await verdict(page).waitFor();
  const sentence = (await page.getByRole('heading', { level: 1 }).textContent())!;
  const [, figure, ...band] = /adds\s(\d+)\shp on average \((\S+) to (\S+)\).*3 pulls against 2/u
    .exec(sentence)!
    .map(signed);
  // The demo's own scenario adds 15 hp between 4,000 and 6,500 rpm.
  expect(band[0]).toBeLessThan(15);
  expect(band[1]).toBeGreaterThan(15);
  // The line beneath says the same gain and the same band as a share: they keep their proportions as far as both are rounded.
  const line = (await verdict(page).textContent())!;
  const [, share, ...shares] = /\+([\d.]+)\s% \((\S+) to (\S+)\s%, at 95\s%\)/u.exec(line)!.map(signed);
  const powerOfOnePercent = figure! / share!;
  for (const end of [0, 1]) {
    expect(Math.abs(band[end]! - powerOfOnePercent * shares[end]!)).toBeLessThan(2);
  }

  expect(await page.getByRole('img').first().locator('path[fill-opacity="0.15"]').count()).toBe(1);
  const said = page.getByRole('region', { name: 'What may be said' });
  for (const name of ['You may say', 'You may not say']) {
    const list = said.getByRole('heading', { name }).locator('+ ul').getByRole('listitem');
    expect(await list.count()).toBeGreaterThan(0);
  }
  await page.getByRole('region', { name: 'More figures' }).locator('summary').click();
  const madeOf = page.getByRole('region', { name: /^Figures: What the band is made of/ });
  expect(await madeOf.getByRole('row').count()).toBe(6);
  await close();
});

test('the verdict follows the window while the hand still holds its end', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, trial);
  const low = page.getByRole('slider', { name: 'Averages, lower end' });
  await low.waitFor();
  // What comes after (a match, its reasons) moves the chart: a hand takes hold when it stands.
  await page.waitForLoadState('networkidle');
  const before = await verdict(page).textContent();
  const box = (await low.boundingBox())!;
  await page.mouse.move(box.x + 22, box.y + 22);
  await page.mouse.down();
  await page.mouse.move(box.x + 122, box.y + 22, { steps: 8 });
  await expect.poll(() => verdict(page).textContent()).not.toBe(before);
  const held = await low.getAttribute('aria-valuetext');
  await expect
    .poll(() => page.getByRole('heading', { level: 1 }).textContent())
    .toContain(`from ${held!.replace(/\s*rpm/, '')} to`);
  await page.mouse.up();
  expect(await low.getAttribute('aria-valuetext')).toBe(held);
  await close();
});

test('a card of the list has the verdict as a word', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, '/');
  const card = page.getByRole('listitem').filter({ hasText: /longer cam add/ });
  await card.getByText(/^(Clear|Likely)$/).waitFor();
  await close();
});
