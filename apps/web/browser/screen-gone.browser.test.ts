import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launch } from './launch.ts';
import { type RunningPullbook, startPullbook } from './start.ts';
import { open, watchedPage } from './watched-page.ts';

let pullbook: RunningPullbook;
let browser: Browser;

beforeAll(async () => {
  [pullbook, browser] = await Promise.all([startPullbook('empty'), launch()]);
});
afterAll(async () => {
  await browser?.close();
  await pullbook?.stop();
});

test('after an update an open page says so, and reloading brings the new one', async () => {
  const { page } = await watchedPage(browser, pullbook.address);
  await open(page, '/');
  await page.route(/\/assets\/PullsPage-.*\.js$/, (route) => route.fulfill({ status: 404 }));
  await page.keyboard.press('2');
  await page.getByRole('heading', { level: 1, name: 'Pullbook was updated: reload' }).waitFor();
  // The frame still stands: the other places can be reached.
  expect(await page.getByRole('navigation', { name: 'Places' }).isVisible()).toBe(true);
  await page.unroute(/\/assets\/PullsPage-.*\.js$/);
  await page.getByRole('button', { name: 'Reload' }).press('Enter');
  await page.getByRole('heading', { level: 1, name: 'Pulls' }).waitFor();
  await page.context().close();
});

test('where the server is gone too, it says that instead', async () => {
  const { page } = await watchedPage(browser, pullbook.address);
  await open(page, '/');
  await page.context().setOffline(true);
  await page.keyboard.press('3');
  await page.getByText(/Pullbook does not answer/).waitFor();
  await page.context().close();
});
