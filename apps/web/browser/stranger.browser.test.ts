import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launch } from './launch.ts';
import { type RunningPullbook, startPullbook } from './start.ts';
import { tabTo } from './tab-to.ts';
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

/** A pull from 2,500 to 6,000 rpm whose torque bends down at the top, `scale` of 400 N·m at most. */
const file = (name: string, scale: number) => ({
  name,
  mimeType: 'text/csv',
  buffer: Buffer.from(
    `Engine speed (rpm),Torque (N·m)\n${Array.from({ length: 71 }, (_, row) => {
      const speed = 2500 + 50 * row;
      return `${speed},${(scale * (400 - ((speed - 4500) / 150) ** 2)).toFixed(2)}`;
    }).join('\n')}\n`,
  ),
});

const hasFocus = (wanted: Locator) =>
  expect
    .poll(() => wanted.evaluate((element) => element === document.activeElement).catch(() => false))
    .toBe(true);

async function press(page: Page, wanted: Locator): Promise<void> {
  await tabTo(page, wanted);
  await page.keyboard.press('Enter');
}

async function write(page: Page, field: Locator, text: string): Promise<void> {
  await tabTo(page, field);
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type(text);
}

const heading = (page: Page, name: string | RegExp) =>
  page.getByRole('heading', { level: 1, name }).waitFor();

/** From an empty book to a still found again, as somebody does it who has no mouse: every act here is a key. */
test('an empty book, a combination, two pulls, a trial, a still, the shop: by keyboard alone', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, '/');
  await page.getByRole('heading', { name: 'Ask one question' }).waitFor();

  // A combination on an engine that the book does not have yet.
  await page.keyboard.press('3');
  await heading(page, 'Combinations');
  await press(page, page.getByRole('link', { name: 'A new combination' }));
  await heading(page, 'A new combination');
  await write(page, page.getByRole('textbox', { name: 'Name of the engine' }), 'Four');
  await write(page, page.getByRole('textbox', { name: 'Name of the combination' }), 'Short runners');
  await write(page, page.getByRole('textbox', { name: 'Bore', exact: true }), '86 mm');
  await press(page, page.getByRole('button', { name: 'Keep this combination' }));
  await heading(page, 'Short runners');

  // The same, but for its intake.
  await press(page, page.getByRole('link', { name: /^Same as this, but/ }));
  await heading(page, /but …/);
  await write(page, page.getByRole('textbox', { name: 'Name of the combination' }), 'Long runners');
  await write(page, page.getByRole('textbox', { name: 'Manifold', exact: true }), 'long runners');
  await page.getByRole('region', { name: 'What this changes' }).getByText('long runners').waitFor();
  await press(page, page.getByRole('button', { name: 'Keep this combination' }));
  await heading(page, 'Long runners');

  // Its pull from a file, then another of the other combination, the same as the last.
  await page.keyboard.press('i');
  await heading(page, 'Add pulls');
  const chooser = page.waitForEvent('filechooser');
  await press(page, page.getByRole('button', { name: 'Choose files' }));
  await (await chooser).setFiles([file('short.csv', 1), file('long.csv', 1.05)]);
  const first = page.getByRole('region', { name: 'short.csv', exact: true });
  const second = page.getByRole('region', { name: 'long.csv', exact: true });
  await second.getByText('What the columns are').waitFor();
  await tabTo(page, first.getByRole('combobox', { name: 'Combination' }));
  await page.keyboard.type('Short');
  await write(page, first.getByLabel('Cell', { exact: true }), 'Cell 2');
  await write(page, first.getByLabel('Pressure', { exact: true }), '98.2 kPa');
  await write(page, first.getByLabel('Temperature'), '30 C');
  await write(page, first.getByLabel('Humidity'), '45 %');
  await tabTo(page, first.getByLabel('Already corrected?'));
  await page.keyboard.type('No');
  await press(page, second.getByRole('button', { name: 'Same as the last' }));
  expect(await second.getByLabel('Pressure', { exact: true }).inputValue()).toBe('98.2 kPa');
  await tabTo(page, second.getByRole('combobox', { name: 'Combination' }));
  await page.keyboard.type('Long');
  await press(page, page.getByRole('button', { name: /^(Add|Keep)/ }).last());
  await page.getByText('2 pulls are in the book.').waitFor();

  // The trial.
  await page.keyboard.press('t');
  await heading(page, 'Start a trial');
  await write(page, page.getByRole('textbox', { name: /find out/ }), 'What do the long runners add?');
  await tabTo(page, page.getByRole('combobox', { name: /baseline/ }));
  await page.keyboard.type('Short');
  await tabTo(page, page.getByRole('combobox', { name: /A combination/ }));
  await page.keyboard.type('Long');
  await press(page, page.getByRole('button', { name: /Start the trial/ }));
  await page.waitForURL(/\/trials\/(?!new)/);
  const answer = page.locator('article h1');
  await answer.waitFor();
  // Everywhere 5 % more torque is 5 % more power: by how the files were made, not by what was printed once.
  await page
    .getByText(/\+5(\.0+)?\s%/)
    .first()
    .waitFor();

  // Another window for the averages, then part of the chart.
  const before = await answer.textContent();
  await write(page, page.getByRole('textbox', { name: 'Averages from' }), '3000');
  await write(page, page.getByRole('textbox', { name: 'to, rpm' }), '5000');
  await page.keyboard.press('Enter');
  await expect.poll(() => answer.textContent()).not.toBe(before);
  expect(await answer.textContent()).toMatch(/3,000 to 5,000/);
  await page.keyboard.press('c');
  const cursor = page.getByRole('slider', { name: 'Cursor, Engine speed' });
  await hasFocus(cursor);
  for (const key of ['Home', 'PageUp', '[', 'PageUp', 'PageUp', ']', 'z']) await page.keyboard.press(key);
  await page.getByText(/^Shown: /).waitFor();
  expect(new URL(page.url()).searchParams.get('low')).not.toBeNull();
  await page.keyboard.press('0');
  await page.getByText(/^Shown: /).waitFor({ state: 'detached' });

  // A pull rejected, and the act taken back.
  const evidence = page.getByRole('region', { name: 'Evidence' });
  await press(page, evidence.getByRole('button', { name: 'Reject long' }));
  await page.getByRole('dialog', { name: 'long' }).waitFor();
  await page.keyboard.type('belt slipped');
  await page.keyboard.press('Enter');
  await evidence.getByText(/belt slipped/).waitFor();
  await expect.poll(() => answer.textContent()).toMatch(/not measured/i);
  await page.keyboard.press('Control+z');
  await evidence.getByText(/belt slipped/).waitFor({ state: 'detached' });
  await expect.poll(() => answer.textContent()).toMatch(/3,000 to 5,000/);

  // A still.
  await page.keyboard.press('p');
  await heading(page, 'Publish');
  await tabTo(page, page.getByRole('button', { name: /^Publish it alone/ }).first());
  const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
  expect(download.suggestedFilename()).toMatch(/\.png$/);

  // Found again by a word of its question.
  await page.keyboard.press('1');
  await heading(page, 'What you have found out');
  await page.keyboard.press('/');
  await hasFocus(page.getByRole('searchbox', { name: 'Find in the trials' }));
  await page.keyboard.type('long run');
  await page.waitForURL(/find=long/);
  await press(page, page.getByRole('listitem').getByRole('link').first());
  await page.getByText('What do the long runners add?').first().waitFor();

  // The shop's units, and what was done.
  await page.keyboard.press('5');
  await heading(page, 'Shop');
  await tabTo(page, page.getByRole('radio', { name: /^US: / }));
  await page.keyboard.press('ArrowDown');
  await page.getByText('Kept.').first().waitFor();
  await page.keyboard.press('2');
  await heading(page, 'Pulls');
  await page
    .getByText(/\d\skW at /)
    .first()
    .waitFor();
  await page.keyboard.press('h');
  await heading(page, 'History');
  await page
    .getByText(/^Undone: /)
    .first()
    .waitFor();
  await close();
}, 180_000);
