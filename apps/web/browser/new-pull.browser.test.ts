import type { Browser, Page } from 'playwright-core';
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

/** “Load” is no word we know: what it is has to be said once. */
const file = (name: string, scale: number) => ({
  name,
  mimeType: 'text/csv',
  buffer: Buffer.from(
    `rpm,Load\n${Array.from({ length: 12 }, (_, row) => `${2000 + 250 * row},${(scale * (30 + row ** 1.5)).toFixed(2)}`).join('\n')}\n`,
  ),
});
const choose = (page: Page, files: ReturnType<typeof file>[]) =>
  page.getByLabel('Logged files').setInputFiles(files);

/** Presses of keys, counted; a typed figure counts its characters apart. */
function counted(page: Page) {
  const count = { keys: 0, characters: 0 };
  return {
    count,
    press: async (key: string, times = 1) => {
      for (let press = 0; press < times; press++) await page.keyboard.press(key);
      count.keys += times;
    },
    type: async (text: string) => {
      await page.keyboard.type(text);
      count.characters += text.length;
    },
  };
}

test('what a file’s columns are is asked once; the next files of its kind go in with one key', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, '/add');
  await choose(page, [file('run-1.csv', 1)]);
  const first = page.getByRole('region', { name: 'run-1.csv', exact: true });
  await first.getByLabel('What Load is').selectOption({ label: 'Torque' });
  await first.getByLabel('Unit of Load').selectOption('kgf·m');
  await first.getByLabel('Cell', { exact: true }).fill('Cell 2');
  await page.getByRole('button', { name: 'Add this file' }).click();
  await page.getByText('1 pull is in the book.').waitFor();

  await open(page, '/add');
  await choose(page, [file('run-2.csv', 1.02), file('run-3.csv', 1.03)]);
  const second = page.getByRole('region', { name: 'run-2.csv', exact: true });
  await second.getByText(/Read as confirmed on .* for run-1\.csv\. Nothing is left to be asked/).waitFor();
  const keep = page.getByRole('button', { name: 'Keep all 2' });
  await keep.waitFor();
  await expect.poll(() => keep.evaluate((button) => button === document.activeElement)).toBe(true);
  expect(await second.getByLabel('Cell', { exact: true }).inputValue()).toBe('Cell 2');
  await page.keyboard.press('Enter');
  await page.getByText('2 pulls are in the book.').waitFor();
  await second.getByRole('link', { name: 'run-2' }).click();
  // 30 kgf·m at 2000 rpm: 1.02 × 30 × 9.80665 N·m ÷ 1.3558179 = 221.3 lb-ft; it rises from there.
  await page
    .getByText(/221\.3/)
    .first()
    .waitFor();
  await close();
});

test('a figure that cannot be is asked about again, with the reason; what is remembered can be set aside', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, '/add');
  await choose(page, [file('wild.csv', 100), file('run-4.csv', 1.04)]);
  const wild = page.getByRole('region', { name: 'wild.csv', exact: true });
  await wild.getByText(/“Load” was torque in kgf·m; 12 of its 12 readings here/).waitFor();
  await wild.getByText('What the columns are').waitFor();
  await page.getByRole('button', { name: 'Add these 2 files' }).waitFor();
  const known = page.getByRole('region', { name: 'run-4.csv', exact: true });
  await known.getByRole('button', { name: 'Read it anew' }).click();
  await known.getByText(/Read anew, as the file itself suggests/).waitFor();
  expect(await known.getByLabel('What Load is').inputValue()).not.toBe('torque');
  await close();
});

test('from the pulls to a new one of a file, by keys alone', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, '/pulls');
  await page.getByRole('link', { name: 'run-2' }).waitFor();
  const { press, count } = counted(page);
  await press('n');
  await page.waitForURL(/\/add\?like=last/);
  await page.getByText(/filled in as in run-3/).waitFor();
  // The button of the files has the focus a moment after the words stand.
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.closest('button')?.textContent ?? ''))
    .toMatch(/file/i);
  const chooser = page.waitForEvent('filechooser');
  await press('Enter');
  await (await chooser).setFiles([file('run-5.csv', 1.05)]);
  const keep = page.getByRole('button', { name: 'Keep it' });
  await expect.poll(() => keep.evaluate((button) => button === document.activeElement)).toBe(true);
  await press('Enter');
  await page.getByText('1 pull is in the book.').waitFor();
  const card = page.getByRole('region', { name: 'run-5.csv', exact: true });
  await card.getByRole('link', { name: /^Pull \d$/ }).waitFor();
  expect(count.keys).toBe(3);
  await close();
});

test('from the pulls to a new one of which only peaks are known, by keys alone', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, '/pulls');
  await page.getByRole('link', { name: 'run-2' }).waitFor();
  const { press, type, count } = counted(page);
  await press('n');
  await page.getByText(/filled in as in Pull \d/).waitFor();
  await press('Tab');
  await press('Enter');
  const dialog = page.getByRole('dialog', { name: 'A pull without a file' });
  const power = dialog.getByLabel('Highest power', { exact: true });
  await expect.poll(() => power.evaluate((field) => field === document.activeElement)).toBe(true);
  for (const [place, figure] of ['331 hp', '6450 rpm', '301 lb-ft', '4900 rpm'].entries()) {
    if (place > 0) await press('Tab');
    await type(figure);
  }
  expect(await dialog.getByLabel('Cell', { exact: true }).inputValue()).toBe('Cell 2');
  await press('Enter');
  await page.waitForURL(/\/pulls\/[0-9a-f-]{36}/);
  const heading = page.getByRole('heading', { level: 1 });
  await expect.poll(() => heading.textContent()).toMatch(/331\shp at 6,450\srpm/);
  expect(count).toEqual({ keys: 7, characters: 31 });
  await close();
});

test('what differs from the pull before is marked; an emptied field is cleared in an amendment', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, '/add');
  await choose(page, [file('run-6.csv', 1.06)]);
  const card = page.getByRole('region', { name: 'run-6.csv', exact: true });
  await card.getByLabel('Cell', { exact: true }).selectText();
  await page.keyboard.type('Cell 1');
  await card.getByText(/^Cell 2 in Pull \d\.$/).waitFor();
  await page.keyboard.press('Enter');
  await card.getByRole('link', { name: 'run-6' }).click();
  await page.waitForURL(/\/pulls\/[0-9a-f-]{36}/);
  await page.getByText('Add one like this').waitFor();
  await page.keyboard.press('e');
  const dialog = page.getByRole('dialog', { name: 'Amend run-6' });
  const cell = dialog.getByLabel('Cell', { exact: true });
  expect(await cell.inputValue()).toBe('Cell 1');
  await cell.fill('');
  await dialog.getByText('Cell 1 stands in the book.').waitFor();
  await dialog.getByLabel('Reason').fill('written down for another');
  await dialog.getByRole('button', { name: 'Keep the amendment' }).click();
  await dialog.waitFor({ state: 'detached' });
  await page.keyboard.press('e');
  expect(await dialog.getByLabel('Cell', { exact: true }).inputValue()).toBe('');
  await close();
});
