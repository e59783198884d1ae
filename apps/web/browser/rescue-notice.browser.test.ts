import { open as openFile, readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { barriers } from './barriers.ts';
import { launch } from './launch.ts';
import { type RunningPullbook, startPullbook } from './start.ts';
import { tabTo } from './tab-to.ts';
import { open, watchedPage } from './watched-page.ts';

let pullbook: RunningPullbook;
let browser: Browser;

beforeAll(async () => {
  browser = await launch();
  pullbook = await startPullbook('demo', damage);
});
afterAll(async () => {
  await browser?.close();
  await pullbook?.stop();
});

/** The beginning of the database is overwritten and two original files are gone. */
async function damage(book: string): Promise<void> {
  const handle = await openFile(join(book, 'book.sqlite'), 'r+');
  await handle.write(Buffer.alloc(100, 0x42), 0, 100, 0);
  await handle.close();
  const shelves = (await readdir(join(book, 'originals'))).sort();
  for (const shelf of shelves.slice(0, 2)) await rm(join(book, 'originals', shelf), { recursive: true });
}

const noticeOn = (page: Page) => page.getByRole('complementary', { name: 'Rescue of the book' });

test.each([
  ['wide', 1440, '/'],
  ['narrow', 390, '/pulls'],
] as const)('a rescue is told on every page, %s: without barriers, and it fits', async (_, width, path) => {
  const { page, close } = await watchedPage(browser, pullbook.address, {
    viewport: { width, height: 844 },
  });
  await open(page, path);
  const notice = noticeOn(page);
  await notice.getByText(/The book was damaged and was rescued: \d+ pulls/).waitFor();
  await notice.getByText('What is lost, and what is poorer').click();
  await notice.getByRole('listitem').first().waitFor();
  const { report } = await (await fetch(`${pullbook.address}/api/rescue`)).json();
  expect(await notice.getByRole('listitem').count()).toBe(report.lost.length + report.poorer.length);
  expect(report.lost.length).toBeGreaterThan(0);
  for (const { name } of report.lost.slice(0, 3)) expect(await notice.textContent()).toContain(name);
  expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(width);
  const { height } = (await notice.getByRole('button').boundingBox())!;
  expect(height).toBeGreaterThanOrEqual(width < 760 ? 44 : 40);
  expect(await barriers(page)).toEqual([]);
  await close();
});

test('it is unfolded and put away by keys alone, for all windows, and stays away; the history keeps it', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, '/');
  const notice = noticeOn(page);
  const summary = notice.getByText('What is lost, and what is poorer');
  await tabTo(page, summary);
  await page.keyboard.press('Enter');
  await notice.getByRole('listitem').first().waitFor();
  await tabTo(page, notice.getByRole('list'));
  await tabTo(page, notice.getByRole('button', { name: 'I have read it' }));
  await page.keyboard.press('Enter');
  await notice.waitFor({ state: 'detached' });
  // Whoever presses Tab next goes on somewhere on the page.
  expect(await page.evaluate('document.activeElement !== null && document.activeElement.isConnected')).toBe(
    true,
  );
  await open(page, '/history');
  await page
    .getByText(/rescue/i)
    .first()
    .waitFor();
  expect(await notice.count()).toBe(0);
  const asides = (await readdir(pullbook.book)).filter((name) => name.startsWith('damaged-'));
  expect(asides).toHaveLength(1);
  await close();
});
