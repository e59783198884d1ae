import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launch } from './launch.ts';
import { type RunningPullbook, startPullbook } from './start.ts';
import { tabTo } from './tab-to.ts';
import { open, type WatchedPage, watchedPage } from './watched-page.ts';

let pullbook: RunningPullbook;
let browser: Browser;

beforeAll(async () => {
  [pullbook, browser] = await Promise.all([startPullbook('demo'), launch()]);
});
afterAll(async () => {
  await browser?.close();
  await pullbook?.stop();
});

async function openPull(name: string): Promise<WatchedPage> {
  const { rows: pulls } = (await (await fetch(`${pullbook.address}/api/pulls`)).json()) as {
    rows: {
      id: string;
      name: string;
    }[];
  };
  const watched = await watchedPage(browser, pullbook.address);
  await open(watched.page, `/pulls/${pulls.find((one) => one.name === name)!.id}`);
  return watched;
}

test('window, width and lag by hand, then back to what is found, by keyboard alone', async () => {
  const { page, close } = await openPull('Pull 9');
  const card = page.getByRole('region', { name: 'How it is read' });
  await card.getByText('the sweep as found').waitFor();
  const cursor = page.getByRole('slider', { name: 'Cursor, Engine speed' });
  const reach = async () => [
    Number(await cursor.getAttribute('aria-valuemin')),
    Number(await cursor.getAttribute('aria-valuemax')),
  ];
  const found = await reach();

  await tabTo(page, card.getByRole('button', { name: 'Change how it is read' }));
  await page.keyboard.press('Enter');
  const dialog = page.getByRole('dialog', { name: 'How Pull 9 is read' });
  await tabTo(page, dialog.getByRole('radio', { name: 'The sweep as found' }));
  await page.keyboard.press('ArrowDown');
  await tabTo(page, dialog.getByRole('textbox', { name: 'From, rpm' }));
  await page.keyboard.type('3,500');
  await tabTo(page, dialog.getByRole('textbox', { name: 'To, rpm' }));
  await page.keyboard.type('6000 rpm');
  await tabTo(page, dialog.getByRole('textbox', { name: 'Means over, rpm' }));
  await page.keyboard.type('100');
  await tabTo(page, dialog.locator('summary'));
  await page.keyboard.press('Enter');
  await tabTo(page, dialog.getByRole('textbox', { name: /lambda, s/i }));
  await page.keyboard.type('0,3');
  await tabTo(page, dialog.getByRole('textbox', { name: 'Reason' }));
  await page.keyboard.type('throttle hand was unsteady at both ends');
  await page.keyboard.press('Enter');
  await dialog.waitFor({ state: 'detached' });

  await card.getByText('set by hand, 3,500 to 6,000 rpm').waitFor();
  await card.getByText('100 rpm', { exact: true }).waitFor();
  await card.getByText(/lambda 0\.3 s earlier/i).waitFor();
  expect(await reach()).toEqual([3500, 6000]);

  await page.getByRole('button', { name: 'Change how it is read' }).click();
  await tabTo(page, dialog.getByRole('radio', { name: 'A window set by hand' }));
  await page.keyboard.press('ArrowUp');
  await tabTo(page, dialog.getByRole('textbox', { name: 'Means over, rpm' }));
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.press('Delete');
  await tabTo(page, dialog.getByRole('textbox', { name: /lambda, s/i }));
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.press('Delete');
  await tabTo(page, dialog.getByRole('textbox', { name: 'Reason' }));
  await page.keyboard.type('it was not');
  await page.keyboard.press('Enter');
  await dialog.waitFor({ state: 'detached' });
  await card.getByText('the sweep as found').waitFor();
  await card.getByText('all as recorded').waitFor();
  expect(await reach()).toEqual(found);
  await close();
});

test('what cannot be is refused in words, and the dialog keeps what was typed', async () => {
  const { page } = await openPull('Pull 8');
  await page.getByRole('button', { name: 'Change how it is read' }).click();
  const dialog = page.getByRole('dialog', { name: 'How Pull 8 is read' });
  await dialog.getByRole('radio', { name: 'A window set by hand' }).check();
  const [from, to] = [dialog.getByLabel('From, rpm'), dialog.getByLabel('To, rpm')];
  await from.fill('idle');
  await to.fill('5000');
  await dialog.getByLabel('Reason').fill('trying');
  await page.keyboard.press('Enter');
  await dialog.getByRole('alert').getByText('"idle"').waitFor();
  await from.fill('6000');
  await page.keyboard.press('Enter');
  await dialog
    .getByRole('alert')
    .getByText(/6000 to 5000/)
    .waitFor();
  expect(await from.inputValue()).toBe('6000');
  await page.context().close();
});

test('tune, place and event are amended by keyboard alone, and stand on the page', async () => {
  const { page, close } = await openPull('Pull 7');
  await page.keyboard.press('e');
  const dialog = page.getByRole('dialog', { name: 'Amend Pull 7' });
  await tabTo(page, dialog.locator('summary'));
  await page.keyboard.press('Enter');
  await tabTo(page, dialog.getByRole('textbox', { name: 'Jets' }));
  await page.keyboard.type('82 and 88');
  await tabTo(page, dialog.getByRole('textbox', { name: 'Operator' }));
  await page.keyboard.type('night shift');
  await tabTo(page, dialog.getByRole('button', { name: 'Something happened at a speed' }));
  await page.keyboard.press('Enter');
  await page.keyboard.type('5600 rpm');
  await page.keyboard.press('Tab');
  await page.keyboard.type('belt squealed');
  await tabTo(page, dialog.getByRole('textbox', { name: 'A note' }));
  await page.keyboard.type('belt dusty');
  await tabTo(page, dialog.getByRole('textbox', { name: 'Reason' }));
  await page.keyboard.type('from the log book');
  await page.keyboard.press('Enter');
  await dialog.waitFor({ state: 'detached' });

  const conditions = page.getByRole('region', { name: 'Conditions' });
  await conditions.getByText('82 and 88').waitFor();
  await conditions.getByText('night shift').waitFor();
  // What was left blank stays: the demo's own spark and its correction.
  await conditions.getByText('22 deg').waitFor();
  await conditions.getByText('observed', { exact: true }).waitFor();
  await page.getByText('5,600 rpm: belt squealed').waitFor();
  await page.getByText(/belt dusty$/).waitFor();
  await close();
});
