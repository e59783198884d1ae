import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { faults } from './barriers.ts';
import { launch } from './launch.ts';
import { type RunningPullbook, startPullbook } from './start.ts';
import { open, watchedPage } from './watched-page.ts';

let pullbook: RunningPullbook;
let browser: Browser;
let pullPath = '';

beforeAll(async () => {
  [pullbook, browser] = await Promise.all([startPullbook('demo'), launch()]);
  const found = await (await fetch(`${pullbook.address}/api/pulls?find=pull&size=1`)).json();
  pullPath = `/pulls/${found.rows[0].id}`;
});
afterAll(async () => {
  await browser?.close();
  await pullbook?.stop();
});

/** Amends the cell of the pull on the page; leaves the dialog where the page keeps it. */
async function amendCell(page: Page, cell: string): Promise<void> {
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Cell', { exact: true }).fill(cell);
  await dialog.getByRole('textbox', { name: 'Reason' }).fill(`it was ${cell}`);
  await dialog.getByRole('button', { name: 'Keep the amendment' }).click();
}

test('an amendment is said, undone by key, and had back on the history page', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, pullPath);
  const amended = page.getByText('north cell');
  await page.keyboard.press('e');
  await amendCell(page, 'north cell');
  const said = page.getByRole('status', { name: 'Last act' });
  await said.getByText(/Amended the pull/).waitFor();
  await amended.first().waitFor();
  expect(await faults(page)).toEqual([]);

  await page.keyboard.press('Control+z');
  await said.getByText(/Undone: amended the pull/).waitFor();
  await page.locator('main').getByText('north cell').waitFor({ state: 'detached' });

  await page.keyboard.press('h');
  await page.getByRole('heading', { level: 1, name: 'History' }).waitFor();
  await page.getByText('north cell').first().waitFor();
  await page.getByRole('button', { name: /^Do it again: Undone: amended the pull/ }).press('Enter');
  await page
    .getByText(/^Done again: amended the pull/)
    .first()
    .waitFor();
  expect(await faults(page)).toEqual([]);
  await open(page, pullPath);
  await amended.first().waitFor();
  await close();
});

test('what is typed into a field is undone by its browser, not the book', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, '/pulls');
  const entries = async () => (await (await fetch(`${pullbook.address}/api/history`)).json()).steps.length;
  const before = await entries();
  await page.keyboard.press('/');
  await page.keyboard.type('base');
  await page.keyboard.press('Control+z');
  await page.waitForLoadState('networkidle');
  expect(await entries()).toBe(before);
  await close();
});

test('two windows on one pull: the later sees what came, keeps what was typed, and can keep both', async () => {
  const one = await watchedPage(browser, pullbook.address);
  const context = await browser.newContext({ baseURL: pullbook.address });
  const other = await context.newPage();
  await open(one.page, pullPath);
  await open(other, pullPath);
  await one.page.keyboard.press('e');
  await other.keyboard.press('e');
  await other.getByRole('dialog').waitFor();
  await amendCell(one.page, 'early cell');
  await one.page.getByRole('dialog').waitFor({ state: 'detached' });

  await amendCell(other, 'late cell');
  const notice = other.getByRole('alert', { name: 'Changed meanwhile' });
  await notice.getByText('early cell', { exact: true }).waitFor();
  await notice.getByText(/it was early cell/).waitFor();
  const typed = other.getByRole('dialog').getByLabel('Cell', { exact: true });
  expect(await typed.inputValue()).toBe('late cell');
  expect(await faults(other)).toEqual([]);
  await notice.getByRole('button', { name: 'Keep mine too' }).press('Enter');
  await other.getByRole('dialog').waitFor({ state: 'detached' });
  await other.locator('main').getByText('late cell').first().waitFor();

  await other.keyboard.press('e');
  await one.page.reload();
  await one.page.locator('main h1').waitFor();
  await one.page.keyboard.press('e');
  await amendCell(one.page, 'third cell');
  await one.page.getByRole('dialog').waitFor({ state: 'detached' });
  await amendCell(other, 'fourth cell');
  await notice.getByRole('button', { name: 'Take theirs' }).press('Enter');
  await other.locator('main').getByText('third cell').first().waitFor();
  await context.close();
  await one.close();
});

test('pulls are found, narrowed and opened by keyboard; what was asked for stands in the address', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address, {
    viewport: { width: 390, height: 844 },
  });
  await open(page, '/pulls');
  await page.locator('main li').first().waitFor();
  const all = await page.locator('main li').count();
  await page.keyboard.press('/');
  await page.keyboard.type('supercharged');
  await page.waitForURL(/find=supercharged/);
  const count = page.locator('search output');
  const shown = async () => Number(/^(\d+) of \d+$/.exec((await count.textContent()) ?? '')?.[1]);
  await expect.poll(shown).toBeLessThan(all);
  expect(await shown()).toBeGreaterThan(0);
  await page.getByRole('button', { name: 'Filter' }).press('Enter');
  await page.getByRole('combobox', { name: 'Ended' }).selectOption('aborted');
  await page.waitForURL(/outcome=aborted/);
  await page.reload();
  await page.locator('main h1').waitFor();
  expect(await page.getByRole('combobox', { name: 'Ended' }).inputValue()).toBe('aborted');
  expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(390);
  expect(await faults(page)).toEqual([]);
  await page.getByRole('button', { name: 'Take all filters away' }).press('Enter');
  await page.waitForURL((url) => !url.search.includes('aborted'));
  await page.locator('main li a').first().press('Enter');
  await page.waitForURL(/\/pulls\/.+/);
  await close();
});
