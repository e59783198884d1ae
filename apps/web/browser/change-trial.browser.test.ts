import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launch } from './launch.ts';
import { type RunningPullbook, startPullbook } from './start.ts';
import { tabTo } from './tab-to.ts';
import { open, watchedPage } from './watched-page.ts';

let pullbook: RunningPullbook;
let browser: Browser;
let path: string;

beforeAll(async () => {
  [pullbook, browser] = await Promise.all([startPullbook('demo'), launch()]);
  const { rows: trials } = (await (await fetch(`${pullbook.address}/api/trials`)).json()) as {
    rows: {
      id: string;
      question: string;
    }[];
  };
  path = `/trials/${trials.find((one) => /longer cam add/.test(one.question))!.id}`;
});
afterAll(async () => {
  await browser?.close();
  await pullbook?.stop();
});

test('another question, name and baseline, by keyboard alone', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, path);
  await page.getByText(/3 pulls against 2/).waitFor();
  const before = await page.getByRole('heading', { level: 1 }).textContent();

  await page.keyboard.press('e');
  const dialog = page.getByRole('dialog', { name: 'Change the trial' });
  await dialog.waitFor();
  // The dialog opens on the question, whole.
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('What does the shorter cam cost?');
  await tabTo(page, dialog.getByRole('button', { name: 'Move up B' }));
  await page.keyboard.press('Enter');
  const nameOfFirst = dialog
    .getByRole('group', { name: 'Combination A' })
    .getByRole('textbox', { name: 'On the chart as' });
  await expect.poll(() => nameOfFirst.evaluate((field) => field === document.activeElement)).toBe(true);
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('long cam');
  await tabTo(page, dialog.getByRole('textbox', { name: 'Reason' }));
  await page.keyboard.type('asked the other way round');
  await page.keyboard.press('Enter');

  await dialog.waitFor({ state: 'detached' });
  await page.locator('main').getByText('What does the shorter cam cost?').waitFor();
  await page.getByText(/2 pulls against 3/).waitFor();
  const after = await page.getByRole('heading', { level: 1 }).textContent();
  expect(after).not.toBe(before);
  // The same gain the other way round: what was added is now missing.
  const figure = (text: string | null) => /(\d+)\shp on average/.exec(text ?? '')?.[1];
  expect(figure(after)).toBe(figure(before));
  await page.getByRole('heading', { name: 'What changed: B base cam' }).waitFor();
  await close();
});

test('a combination joins with a pull of its own and leaves again, by keyboard alone', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, path);
  const evidence = page.getByRole('region', { name: 'Evidence' });
  const pulls = await evidence.getByRole('listitem').count();

  await page.keyboard.press('e');
  const dialog = page.getByRole('dialog', { name: 'Change the trial' });
  await tabTo(page, dialog.getByRole('button', { name: 'One more combination' }));
  await page.keyboard.press('Enter');
  const third = dialog.getByRole('group', { name: 'Combination C' });
  await third.waitFor();
  await expect.poll(() => third.evaluate((row) => row.contains(document.activeElement))).toBe(true);
  await page.keyboard.type('no blower');
  await page.keyboard.press('Shift+Tab');
  await page.keyboard.type('Naturally aspirated, b');
  await tabTo(page, third.getByRole('checkbox', { name: /^Pull 1/ }));
  await page.keyboard.press('Space');
  await tabTo(page, dialog.getByRole('textbox', { name: 'Reason' }));
  await page.keyboard.type('to see it beside');
  await page.keyboard.press('Enter');
  await dialog.waitFor({ state: 'detached' });
  await expect.poll(() => evidence.getByRole('listitem').count()).toBe(pulls + 1);
  await page.getByRole('heading', { name: 'What changed: C no blower' }).waitFor();

  await page.keyboard.press('e');
  await tabTo(page, dialog.getByRole('button', { name: 'Remove C' }));
  await page.keyboard.press('Enter');
  await dialog.getByText(/no blower leaves the trial/).waitFor();
  await tabTo(page, dialog.getByRole('textbox', { name: 'Reason' }));
  await page.keyboard.type('seen');
  await page.keyboard.press('Enter');
  await dialog.waitFor({ state: 'detached' });
  await expect.poll(() => evidence.getByRole('listitem').count()).toBe(pulls);
  await close();
});

test('that the engine was not taken apart is said in a list, by keyboard, and stands in the history', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, path);
  const say = async (answer: string, reason: string) => {
    await page.keyboard.press('e');
    const dialog = page.getByRole('dialog', { name: 'Change the trial' });
    expect(await dialog.getByRole('combobox', { name: 'Engine taken apart for it' }).count()).toBe(1);
    await tabTo(page, dialog.getByRole('combobox', { name: 'Engine taken apart for it' }));
    await page.keyboard.type(answer);
    await tabTo(page, dialog.getByRole('textbox', { name: 'Reason' }));
    await page.keyboard.type(reason);
    await page.keyboard.press('Enter');
    await dialog.waitFor({ state: 'detached' });
  };
  await say('No', 'it went on, on the brake');
  await open(page, '/history');
  await page.getByText('(engine not taken apart for it)').first().waitFor();
  await open(page, path);
  await say('Told', 'looked at the parts again');
  await close();
});

test('without a reason nothing is changed; Escape leaves all as it was', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, path);
  const question = await page.locator('article p').first().textContent();
  await page.keyboard.press('e');
  const dialog = page.getByRole('dialog', { name: 'Change the trial' });
  await dialog.getByRole('textbox', { name: 'The question' }).fill('Another?');
  await page.keyboard.press('Enter');
  expect(await dialog.isVisible()).toBe(true);
  await page.keyboard.press('Escape');
  await dialog.waitFor({ state: 'detached' });
  await page.reload();
  expect(await page.locator('article p').first().textContent()).toBe(question);
  await close();
});
