import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { KEY_LIST } from '../src/keys/key-list.ts';
import { launch } from './launch.ts';
import { type RunningPullbook, startPullbook } from './start.ts';
import { tabTo } from './tab-to.ts';
import { open, watchedPage } from './watched-page.ts';

let pullbook: RunningPullbook;
let browser: Browser;

beforeAll(async () => {
  [pullbook, browser] = await Promise.all([startPullbook('demo'), launch()]);
});
afterAll(async () => {
  await browser?.close();
  await pullbook?.stop();
});

test('start a trial, move the cursor, publish: by keyboard alone', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, '/');

  await page.keyboard.press('t');
  await page.getByRole('heading', { level: 1, name: 'Start a trial' }).waitFor();
  await tabTo(page, page.getByRole('textbox', { name: /find out/ }));
  await page.keyboard.type('What does the longer cam add, asked again?');
  const baseline = page.getByRole('combobox', { name: /baseline/ });
  await tabTo(page, baseline);
  // The one with the smaller pulley goes on with a comma there.
  await page.keyboard.type('Supercharged, base cam ');
  expect(await baseline.locator('option:checked').textContent()).toMatch(/^Supercharged, base cam ·/);
  await tabTo(page, page.getByRole('combobox', { name: /A combination/ }));
  await page.keyboard.type('Supercharged, 1');
  await tabTo(page, page.getByRole('button', { name: /Start the trial/ }));
  await page.keyboard.press('Enter');

  await page.waitForURL(/\/trials\/(?!new)/);
  await page.locator('main').getByText('What does the longer cam add, asked again?').waitFor();
  await page.getByRole('heading', { level: 1, name: /adds\s[\d.]+\shp/ }).waitFor();

  const cursor = page.getByRole('slider', { name: 'Cursor, Engine speed' });
  await cursor.waitFor();
  await page.keyboard.press('c');
  expect(await cursor.evaluate((element) => element === document.activeElement)).toBe(true);
  await page.keyboard.press('Home');
  const lowest = Number(await cursor.getAttribute('aria-valuenow'));
  await page.keyboard.press('ArrowRight');
  const next = Number(await cursor.getAttribute('aria-valuenow'));
  await page.keyboard.press('Shift+ArrowRight');
  const further = Number(await cursor.getAttribute('aria-valuenow'));
  expect(next).toBeGreaterThan(lowest);
  expect(further - next).toBe(10 * (next - lowest));

  await page.keyboard.press('p');
  await page.getByRole('heading', { level: 1, name: 'Publish' }).waitFor();
  await tabTo(page, page.getByRole('checkbox', { name: /^Square/ }));
  await page.keyboard.press('Space');
  // Back over the 4K one: the wide one goes, now that another is there.
  for (const key of ['Shift+Tab', 'Shift+Tab', 'Space']) await page.keyboard.press(key);
  await tabTo(page, page.getByRole('button', { name: /^Publish it alone/ }).first());
  const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
  expect(download.suggestedFilename()).toMatch(/1080x1080.*\.png$/);
  await close();
});

/** A letter that would lead to another page does not: the address changes before that page is fetched. */
async function stays(page: Page): Promise<void> {
  await page.keyboard.press('t');
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  expect(new URL(page.url()).pathname).toBe('/');
}

test('the keys are shown, can be switched off, and leave what is typed alone', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, '/');
  await page.keyboard.press('/');
  await page.keyboard.type('cam');
  expect(await page.getByRole('searchbox').inputValue()).toBe('cam');
  expect(new URL(page.url()).pathname).toBe('/');
  await page.keyboard.press('Tab');

  await page.keyboard.press('?');
  const overlay = page.getByRole('dialog', { name: 'Keys' });
  await overlay.getByText('Start a trial').waitFor();
  for (const { does } of KEY_LIST) await overlay.getByText(does, { exact: true }).first().waitFor();

  // Held back: what was chosen holds at once, not when the book has answered.
  let answer = () => {};
  const answered = new Promise<void>((resolve) => {
    answer = resolve;
  });
  await page.route('**/api/settings', async (route) => {
    if (route.request().method() === 'PATCH') await answered;
    await route.continue();
  });
  await overlay.getByLabel(/Single-letter keys/).press('Space');
  await page.keyboard.press('Escape');
  await overlay.waitFor({ state: 'detached' });
  await stays(page);

  const kept = page.waitForResponse((response) => response.request().method() === 'PATCH');
  answer();
  await kept;
  await page.reload();
  await page.locator('main h1').waitFor();
  await stays(page);
  await close();
});

test('the first Tab offers to skip the bar', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, '/');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('content');
  await close();
});
