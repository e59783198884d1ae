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

const verdict = (page: Page) => page.getByRole('region', { name: 'Verdict' });

test('a trial shows its verdict with its band, draws the band, and says what may be said and what not', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, trial);
  await verdict(page).waitFor();
  const words = (await verdict(page).textContent())!;
  const [, figure, low, high] =
    /^(?:Clear|Likely)\+(\d+)\shp \((\S+) to (\S+), 95\s%\) · 3 pulls against 2/.exec(words)!;
  const signed = (text: string) => Number(text.replace('−', '-'));
  // The demo's own scenario adds 15 hp between 4,000 and 6,500 rpm.
  expect(signed(low!)).toBeLessThan(15);
  expect(signed(high!)).toBeGreaterThan(15);
  // The sentence and the line beneath it say one figure and one band.
  const sentence = await page.getByRole('heading', { level: 1 }).textContent();
  expect(sentence).toMatch(new RegExp(`adds\\s${figure}\\shp`));
  expect(sentence).toContain(`(${low} to ${high})`);

  expect(await page.getByRole('img').first().locator('path[opacity="0.15"]').count()).toBe(1);
  const said = page.getByRole('region', { name: 'What may be said' });
  for (const name of ['You may say', 'You may not say']) {
    const list = said.getByRole('heading', { name }).locator('+ ul').getByRole('listitem');
    expect(await list.count()).toBeGreaterThan(0);
  }
  const madeOf = page.getByRole('region', { name: /^What the band is made of/ }).first();
  expect(await madeOf.getByRole('row').count()).toBe(6);
  await close();
});

test('the verdict follows the window while the hand still holds its end', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, trial);
  const low = page.getByRole('slider', { name: 'Averages, lower end' });
  await low.waitFor();
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
