import { readFile } from 'node:fs/promises';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { launch } from './launch.ts';
import { type RunningPullbook, startPullbook } from './start.ts';
import { tabTo } from './tab-to.ts';
import { open, watchedPage } from './watched-page.ts';

/** A search shares the machine with the server and the other tests. */
const SEARCH = { timeout: 30_000 };
vi.setConfig({ testTimeout: 120_000 });

let pullbook: RunningPullbook;
let browser: Browser;

beforeAll(async () => {
  [pullbook, browser] = await Promise.all([startPullbook('demo'), launch()]);
});
afterAll(async () => {
  await browser?.close();
  await pullbook?.stop();
});

const ask = async (path: string) => (await fetch(`${pullbook.address}/api${path}`)).json();

async function combination(called: string): Promise<string> {
  const all = (await ask('/combinations')) as { id: string; name: string }[];
  return all.find(({ name }) => name === called)!.id;
}

const power = (page: Page) => page.getByRole('textbox', { name: 'Power', exact: true });
const rungs = (page: Page) => page.getByRole('group', { name: /^Ways to the target/ }).getByRole('radio');
const isPng = (bytes: Buffer) => bytes.toString('latin1', 1, 4) === 'PNG' && bytes.length > 10_000;
const inAddress = (page: Page, name: string) => new URL(page.url()).searchParams.get(name);
const found = (page: Page) =>
  page
    .getByRole('status')
    .filter({ hasText: /\d ways? to / })
    .waitFor(SEARCH);

test('by keyboard alone: R on a combination, a power without its unit, arrows along the ladder, Enter; kept, its card, its plan, found again', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, `/combinations/${await combination('Supercharged, base cam, smaller blower pulley')}`);
  await page.keyboard.press('r');
  await page.getByText('Write the power it should make.').waitFor();
  await tabTo(page, power(page));
  await page.keyboard.type('520');
  await found(page);
  expect(inAddress(page, 'power')).toContain('520');
  // The engine as it is stands before the rungs; the first rung is chosen.
  expect(await rungs(page).nth(1).isChecked()).toBe(true);
  await tabTo(page, rungs(page).nth(1));
  await page.keyboard.press('ArrowDown');
  await expect.poll(() => rungs(page).nth(2).isChecked()).toBe(true);
  const second = inAddress(page, 'rung');
  expect(second).not.toBeNull();
  await page.keyboard.press('Enter');
  await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toMatch(/^2\. /);
  const answer = await page.locator('h1').textContent();
  await tabTo(page, page.getByRole('button', { name: 'Keep this answer' }));
  await page.keyboard.press('Enter');
  await page.waitForURL(/\/reach\/[^/?]+/, SEARCH);
  await page.getByRole('region', { name: 'Answer card' }).getByRole('img').waitFor();
  // The server searched again by the same seed: the answer that was looked at is the answer that is kept.
  expect(await page.locator('h1').textContent()).toBe(answer);
  await tabTo(page, page.getByRole('button', { name: 'Publish the card' }));
  const [card] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
  expect(await readFile(await card.path())).toSatisfy(isPng);
  await tabTo(page, page.getByRole('button', { name: 'Plan this way' }));
  await page.keyboard.press('Enter');
  await page.waitForURL(/\/trials\/[^/]+\/plan/, SEARCH);
  await page.getByRole('heading', { level: 1, name: 'Plan the next pulls' }).waitFor(SEARCH);
  await page.keyboard.press('4');
  await page.getByRole('heading', { name: 'Asked before' }).waitFor();
  const asked = page.getByRole('main').getByRole('listitem').filter({ hasText: '520 hp' });
  await expect.poll(() => asked.count()).toBe(1);
  await asked.getByRole('link', { name: /^became / }).waitFor();
  await page.keyboard.press('/');
  await page.keyboard.type('nothing like it');
  await page.getByText('Nothing was asked like that.').waitFor();
  await close();
});

test('a rung becomes a trial with its plan in one press; the kept answer says so', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  const id = await combination('Supercharged, base cam');
  await open(page, `/combinations/${id}/reach?power=510%20hp&without=fuel`);
  await found(page);
  await page.getByRole('button', { name: 'Plan this way' }).click();
  await page.waitForURL(/\/trials\/[^/]+\/plan/, SEARCH);
  await page.getByRole('heading', { level: 1, name: 'Plan the next pulls' }).waitFor(SEARCH);
  await open(page, '/reach?find=510');
  await page
    .getByRole('link', { name: /^became What does .* add towards 510 hp\?/ })
    .first()
    .waitFor();
  await page.locator('main h3 a').first().click();
  await page.getByRole('link', { name: 'Its trial and plan' }).waitFor();
  await close();
});

test('what cannot be is said in its place, and what was typed stays', async () => {
  const { page } = await watchedPage(browser, pullbook.address);
  const id = await combination('Supercharged, base cam');
  await open(page, `/combinations/${id}/reach?power=520%20hp&boostCap=12%20psi&without=fuel`);
  await power(page).fill('300 hp');
  await page.getByRole('alert').filter({ hasText: /300/ }).waitFor(SEARCH);
  await power(page).fill('520 bananas');
  await page
    .getByRole('alert')
    .filter({ hasText: /bananas/ })
    .waitFor(SEARCH);
  expect(await power(page).inputValue()).toBe('520 bananas');
  expect(inAddress(page, 'boostCap')).toBe('12 psi');
  expect(await rungs(page).count()).toBe(0);
  await power(page).fill('900 hp');
  // No way to it: why, and what would help.
  await page
    .getByRole('heading', { name: 'Out of reach with what can be bought', exact: true })
    .waitFor(SEARCH);
  await page.getByText('The least that would help:').waitFor();
  await page.context().close();
});

test('a size is added to the parts list, one that cannot be is refused with what was typed, and all goes back', async () => {
  const { page } = await watchedPage(browser, pullbook.address);
  await open(page, '/shop/parts');
  await page.getByRole('button', { name: 'Add to Step-ups' }).click();
  const ratio = page.getByRole('textbox', { name: 'Turns of the impeller for one of the input' });
  await ratio.fill('a lot');
  await page.getByRole('button', { name: 'Keep' }).click();
  await page.getByRole('dialog').getByRole('alert').waitFor();
  expect(await ratio.inputValue()).toBe('a lot');
  await ratio.fill('3.8');
  await page.getByRole('button', { name: 'Keep' }).click();
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  const stepUps = page.getByRole('region', { name: 'Step-ups' });
  await stepUps.getByText('3.80').first().waitFor();
  await page.getByRole('checkbox', { name: 'Choke' }).check();
  await page.getByText('The shop’s own: usually it only cautions.').waitFor();
  await page.getByRole('button', { name: 'Back to what is usual' }).click();
  await stepUps.getByText('None.').waitFor();
  await page.context().close();
});
