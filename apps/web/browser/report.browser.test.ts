import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { reportHtml } from '../../../packages/publish/src/index.ts';
import { blown, reportOf } from '../../../packages/views/src/report/report-of.test-support.ts';
import { faults } from './barriers.ts';
import { launch } from './launch.ts';
import { watchedPage } from './watched-page.ts';

// A customer's report is opened from a disk, without a server and without the book.
const report = reportOf(blown());
let browser: Browser;
let folder: string;
let address: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-report-'));
  const path = join(folder, 'report.html');
  await writeFile(path, await reportHtml(report, { numbers: { a: 1 } }));
  address = pathToFileURL(path).href;
  browser = await launch();
});
afterAll(async () => {
  await browser?.close();
  await rm(folder, { recursive: true });
});

test.each([
  ['light', 1440],
  ['dark', 390],
] as const)('no barrier and no sideways scrolling, %s, %i px', async (colorScheme, width) => {
  const viewport = { width, height: 900 };
  const { page, close } = await watchedPage(browser, address, { colorScheme, viewport, offline: true });
  await page.goto(address);
  expect(await faults(page)).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
  // Its own letters, not the machine's.
  expect(await page.evaluate(() => [...document.fonts].every(({ status }) => status === 'loaded'))).toBe(
    true,
  );
  await close();
});

test('the cursor goes by keys, pointer and finger, with the figures of the page; a combination can be hidden', async () => {
  const { page, close } = await watchedPage(browser, address, { offline: true, hasTouch: true });
  await page.goto(address);
  const cursor = report.sections
    .flatMap(({ blocks }) => blocks)
    .find((block) => block.kind === 'chart')!.cursor;
  const slider = page.getByRole('slider', { name: 'Engine speed' });
  const shown = async () => page.locator('.readout tbody tr').first().locator('td').allTextContents();
  const figuresAt = (node: number) => cursor.rows[0]!.cells.map((column) => column[node]);
  expect(await shown()).toEqual(figuresAt(cursor.start));
  await slider.focus();
  await page.keyboard.press('Home');
  await page.keyboard.press('ArrowRight');
  expect(await shown()).toEqual(figuresAt(1));
  expect(await slider.getAttribute('aria-valuetext')).toContain(`A ${figuresAt(1)[0]}`);
  const drawing = page.locator('.drawing.wide');
  await drawing.scrollIntoViewIfNeeded();
  const box = (await drawing.boundingBox())!;
  await page.mouse.move(box.x + 0.6 * box.width, box.y + 0.2 * box.height);
  expect(await shown()).toEqual(figuresAt(Number(await slider.inputValue())));
  const pointed = Number(await slider.inputValue());
  expect(pointed).toBeGreaterThan(10);
  await page.touchscreen.tap(box.x + 0.3 * box.width, box.y + 0.2 * box.height);
  expect(Number(await slider.inputValue())).toBeLessThan(pointed);
  expect(await shown()).toEqual(figuresAt(Number(await slider.inputValue())));
  const curve = drawing.locator('path.c1').first();
  await page.getByRole('checkbox', { name: 'B' }).uncheck();
  expect(await curve.evaluate((one) => getComputedStyle(one).visibility)).toBe('hidden');
  await close();
});

test('without script it is whole', async () => {
  const { page, close } = await watchedPage(browser, address, { javaScriptEnabled: false, offline: true });
  await page.goto(address);
  await expect
    .poll(() => page.getByRole('heading', { level: 2 }).count())
    .toBe(report.sections.length + report.appendix.length);
  expect(await page.locator('.drawing.wide svg').isVisible()).toBe(true);
  expect(await page.locator('.live').isVisible()).toBe(false);
  await close();
});
