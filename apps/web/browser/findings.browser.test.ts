import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
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

test('a finding is silenced with a reason by keyboard, stays with it, and speaks again after the undo, and by keyboard', async () => {
  const { rows } = (await (await fetch(`${pullbook.address}/api/pulls`)).json()) as {
    rows: { id: string; name: string }[];
  };
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, `/pulls/${rows.find((one) => one.name === 'Pull 9')!.id}`);
  const card = page.getByRole('region', { name: 'Findings' });
  await card.getByText('still climbing').waitFor();
  // What a rule says is not said again among the remarks.
  expect(await page.getByRole('region', { name: 'Remarks' }).getByText('still climbing').count()).toBe(0);

  const silence = card.getByRole('button', { name: 'Silence V29' });
  const silenceIt = async () => {
    await tabTo(page, silence);
    await page.keyboard.press('Enter');
    const dialog = page.getByRole('dialog', { name: 'Silence V29' });
    await tabTo(page, dialog.getByRole('textbox', { name: 'Why it does not hold here' }));
    await page.keyboard.type('the valve springs end there');
    await tabTo(page, dialog.getByRole('button', { name: 'Silence it' }));
    await page.keyboard.press('Enter');
    await card.getByText(/Silenced on .+: the valve springs end there/).waitFor();
    await card.getByText('still climbing').waitFor();
  };
  await silenceIt();

  await page.getByRole('button', { name: 'Undo' }).first().click();
  await silence.waitFor();
  expect(await card.getByText('the valve springs end there').count()).toBe(0);

  // The focus stays where the hand is: on the one button that silences and lets speak.
  await silenceIt();
  const letSpeak = card.getByRole('button', { name: 'Let V29 speak again' });
  await expect.poll(() => letSpeak.evaluate((one) => one === document.activeElement)).toBe(true);
  await page.keyboard.press('Enter');
  await silence.waitFor();
  expect(await card.getByText('the valve springs end there').count()).toBe(0);
  expect(await silence.evaluate((one) => one === document.activeElement)).toBe(true);
  await close();
});
