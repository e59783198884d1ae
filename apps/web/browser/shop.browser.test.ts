import { execFile } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { barriers, beside } from './barriers.ts';
import { launch } from './launch.ts';
import { type RunningPullbook, startPullbook } from './start.ts';
import { tabTo } from './tab-to.ts';
import { open, watchedPage } from './watched-page.ts';

const program = fileURLToPath(new URL('../../cli/bin/pullbook.mjs', import.meta.url));
let pullbook: RunningPullbook;
let browser: Browser;

beforeAll(async () => {
  [pullbook, browser] = await Promise.all([startPullbook('demo'), launch()]);
});
afterAll(async () => {
  await browser?.close();
  await pullbook?.stop();
});

/** The command line, on the book that the server has open. */
async function onCommandLine(...argv: string[]): Promise<string> {
  const run = promisify(execFile);
  const { stdout } = await run(process.execPath, [program, ...argv, '--book', pullbook.book]);
  return stdout;
}

test('a cell is described and an instrument calibrated, by keyboard alone', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, '/');
  await page.keyboard.press('5');
  await page.getByRole('heading', { level: 1, name: 'Shop' }).waitFor();

  await tabTo(page, page.getByRole('button', { name: 'Describe a cell' }));
  await page.keyboard.press('Enter');
  await tabTo(page, page.getByRole('dialog').getByRole('textbox', { name: 'Name' }));
  await page.keyboard.type('Cell 3');
  await tabTo(page, page.getByRole('textbox', { name: 'Altitude' }));
  await page.keyboard.type('210 m');
  await page.keyboard.press('Enter');
  const cell = page.getByRole('region', { name: 'Cell 3' });
  await cell.getByText('689 ft').waitFor();

  await tabTo(page, cell.getByRole('button', { name: /Add an instrument/ }));
  await page.keyboard.press('Enter');
  await page.getByRole('dialog').waitFor();
  await page.keyboard.type('Load cell');
  await page.keyboard.press('Enter');
  await cell.getByText('No calibration noted').waitFor();
  await tabTo(page, cell.getByRole('button', { name: /Calibrated …/ }));
  await page.keyboard.press('Enter');
  const day = page.getByLabel('Day', { exact: true });
  await day.fill('2026-03-10');
  await page.getByLabel('Valid until').fill('9000-01-01');
  await tabTo(page, page.getByRole('button', { name: 'Keep the calibration' }));
  await page.keyboard.press('Enter');
  await cell.getByText('Calibrated', { exact: true }).waitFor();
  expect(await onCommandLine('cell', 'show', 'Cell 3')).toContain('2026-03-10 to 9000-01-01');
  await close();
});

test('settings stick: over a reload, in another window, on the command line; and from there on the screen', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, '/shop');
  await page.getByLabel('SI: kW, N·m, kPa, °C').check();
  await page.getByText('Kept.').first().waitFor();
  await page.getByLabel('Power and torque by').selectOption('iso-1585');
  await page.getByLabel('Bin width').fill('200 rpm');
  await page.keyboard.press('Enter');
  await expect.poll(() => onCommandLine('settings')).toMatch(/binWidthRpm\s+200/);
  expect(await onCommandLine('settings')).toMatch(/correction\s+iso-1585/);
  expect(await onCommandLine('list', 'pulls')).toContain('kW');
  await page.reload();
  await page.getByText('210 m').first().waitFor();
  expect(await page.getByLabel('Bin width').inputValue()).toBe('200 rpm');

  const other = await watchedPage(browser, pullbook.address);
  await open(other.page, '/pulls');
  await other.page.getByText('Pull 9').first().click();
  await other.page.getByText(/bins as the shop has them/).waitFor();
  expect(await other.page.getByLabel('Power and torque by').inputValue()).toBe('iso-1585');
  await other.close();

  await onCommandLine(
    'settings',
    '--set',
    'units=us',
    '--set',
    'binWidthRpm=adapted',
    '--set',
    'correction=sae-j1349',
  );
  await page.reload();
  await page.getByText('689 ft').first().waitFor();
  await close();
});

test('the theme: the shop’s stands at once, a machine may choose its own', async () => {
  await onCommandLine('settings', '--set', 'theme=dark');
  const { page, close } = await watchedPage(browser, pullbook.address, { colorScheme: 'light' });
  const theme = () => page.evaluate(() => document.documentElement.dataset.theme);
  // Held back: were the theme asked for, it could not come.
  await page.route('**/api/settings', () => undefined);
  await open(page, '/shop').catch(() => undefined);
  expect(await theme()).toBe('dark');
  await page.unroute('**/api/settings');
  await open(page, '/pulls');
  await page.getByRole('button', { name: 'View' }).click();
  await page.getByRole('radio', { name: 'Light' }).check();
  expect(await theme()).toBe('light');
  await page.reload();
  await page.locator('main h1').waitFor();
  expect(await theme()).toBe('light');
  await onCommandLine('settings', '--set', 'theme=system');
  await close();
});

// At a desk page and dialogs are looked at with all others; here as they are at a telephone's width.
test('the shop page and its dialogs, narrow: no barrier, light or dark, nothing beside the screen', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address, {
    viewport: { width: 390, height: 844 },
  });
  await open(page, '/shop');
  await page.getByRole('region', { name: 'cell 1' }).waitFor();
  expect(await barriers(page)).toEqual([]);
  expect(await beside(page.locator('html'))).toBe(0);
  for (const name of [/Describe a cell/, /Add an instrument/, /Calibrated …/, /Take out …/]) {
    await page.getByRole('button', { name }).first().click();
    await page.getByRole('dialog').waitFor();
    expect(await barriers(page, { within: '[role=dialog]' })).toEqual([]);
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
  }
  await close();
});

test('a customer’s trial: said on the page and the list, and its still leaves only after a tick', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, '/');
  const card = page.getByRole('listitem').filter({ hasText: /longer cam add/i });
  await card.getByRole('link').first().click();
  await page.getByText('May be seen by: everyone.').waitFor();
  await page.getByRole('button', { name: /who may see it/ }).click();
  await page.getByRole('radio', { name: /The customer/ }).check();
  await page.getByRole('button', { name: 'Keep', exact: true }).click();
  await page.getByText('May be seen by: the customer whose engine it is.').waitFor();
  await page.getByText('Customer’s', { exact: true }).waitFor();
  await page.getByRole('button', { name: /Publish/ }).click();
  const alone = page.getByRole('button', { name: /^Publish it alone/ }).first();
  await alone.waitFor();
  expect(await alone.isDisabled()).toBe(true);
  expect(await page.getByRole('button', { name: 'Publish all' }).isDisabled()).toBe(true);
  await page.getByLabel('Let it leave the shop all the same').check();
  const [asked] = await Promise.all([
    page.waitForRequest((request) => request.method() === 'POST' && /\/publish$/.test(request.url())),
    alone.click(),
  ]);
  expect(asked.postDataJSON()).toMatchObject({ privateToo: true });
  await close();
});
