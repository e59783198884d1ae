import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { faults } from './barriers.ts';
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

/** Address of the trial of which a combination was not pulled. */
async function unpulledTrial(): Promise<string> {
  const { rows } = await (await fetch(`${pullbook.address}/api/trials`)).json();
  const isAsked = ({ question }: { question: string }) => /without the supercharger/.test(question);
  return `/trials/${rows.find(isAsked).id}`;
}

test('a prediction is kept by keyboard alone before the pull, and stands in the ledger', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, await unpulledTrial());
  const predict = page.getByRole('button', { name: 'Predict before the pull' });
  await tabTo(page, predict);
  await page.keyboard.press('Enter');
  const dialog = page.getByRole('dialog');
  await tabTo(page, dialog.getByRole('textbox', { name: 'Peak power' }));
  await page.keyboard.type('345 hp');
  await tabTo(page, dialog.getByRole('textbox', { name: 'At least' }));
  await page.keyboard.type('335 hp');
  await tabTo(page, dialog.getByRole('textbox', { name: 'At most' }));
  await page.keyboard.type('355 hp');
  await tabTo(page, dialog.getByRole('textbox', { name: 'What it rests on' }));
  await page.keyboard.type('scaled from the boosted pair');
  expect(await faults(page)).toEqual([]);
  await page.keyboard.press('Enter');
  await page.getByText('A: Peak power 345 hp (335 hp to 355 hp)').waitFor();

  await open(page, '/shop/figures');
  await page.getByRole('heading', { level: 1, name: 'The shop’s own figures' }).waitFor();
  await page.getByText('2 of 3 inside their bands so far.').waitFor();
  await page.getByText('Supercharged, cell 1').first().waitFor();
  await close();
});

test('the shop’s guess is kept and shows in the figures', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, '/shop');
  const card = page.getByRole('region', { name: 'How much this shop scatters' });
  await card.getByRole('textbox', { name: 'Another set-up, the same day' }).fill('0.3 %');
  await card.getByRole('button', { name: 'Keep these figures' }).click();
  await expect
    .poll(() => card.getByRole('textbox', { name: 'Another set-up, the same day' }).inputValue())
    .toMatch(/^0\.30\s%$/);
  await card.getByRole('link', { name: 'What the shop’s pulls say so far' }).click();
  const row = page.getByRole('row', { name: /Another set-up/ });
  await row.getByText('said by the shop').waitFor();
  await row.getByText(/0\.30\s%/).waitFor();
  await close();
});

test('what cannot stand is refused in words, and what was typed stays', async () => {
  const page = await browser.newPage({ baseURL: pullbook.address });
  await open(page, '/shop');
  const card = page.getByRole('region', { name: 'How much this shop scatters' });
  await card.getByRole('textbox', { name: 'Another day, besides' }).fill('0.5');
  await card.getByRole('button', { name: 'Keep these figures' }).click();
  await card.getByText('day: "0.5" cannot stand there').first().waitFor();
  expect(await card.getByRole('textbox', { name: 'Another day, besides' }).inputValue()).toBe('0.5');

  await open(page, await unpulledTrial());
  await page.getByRole('button', { name: 'Predict before the pull' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('textbox', { name: 'Peak power' }).fill('345');
  await dialog.getByRole('button', { name: 'Keep the prediction' }).click();
  await dialog.getByText('"345" cannot stand there').first().waitFor();
  expect(await dialog.getByRole('textbox', { name: 'Peak power' }).inputValue()).toBe('345');
  await page.close();
});
