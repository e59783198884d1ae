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

const send = (method: 'POST' | 'PATCH', path: string, body: object) =>
  fetch(`${pullbook.address}/api${path}`, {
    method,
    headers: { 'content-type': 'application/json', origin: pullbook.address },
    body: JSON.stringify(body),
  });

test('an engine gets another build with a reason, by keyboard alone; what another window wrote is told', async () => {
  const { page } = await watchedPage(browser, pullbook.address);
  await open(page, '/combinations');
  const engines = page.getByRole('region', { name: 'Engines' });
  const change = engines.getByRole('button', { name: 'Change Hill-climb six' }).first();
  const dialog = page.getByRole('dialog', { name: 'Change Hill-climb six' });
  const build = dialog.getByRole('textbox', { name: 'Build' });
  const rebuild = async (words: string) => {
    await tabTo(page, build);
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type(words);
    await tabTo(page, dialog.getByRole('textbox', { name: 'Reason' }));
    await page.keyboard.type('rings and bearings');
  };
  await tabTo(page, change);
  await page.keyboard.press('Enter');
  await rebuild('third build');
  await page.keyboard.press('Enter');
  await dialog.waitFor({ state: 'detached' });
  await engines.getByText(/^Build third build/).waitFor();

  await expect.poll(() => change.evaluate((button) => button === document.activeElement)).toBe(true);
  await page.keyboard.press('Enter');
  await rebuild('fourth build');
  const rows = (await (await fetch(`${pullbook.address}/api/engines`)).json()) as {
    id: string;
    buildRevision: string;
  }[];
  const { id } = rows.find(({ buildRevision }) => buildRevision === 'third build')!;
  await send('PATCH', `/engines/${id}`, { notes: 'written beside it', reason: 'another window' });
  await page.keyboard.press('Enter');
  const told = dialog.getByRole('alert', { name: 'Changed meanwhile' });
  await told.getByText('written beside it', { exact: true }).waitFor();
  expect(await build.inputValue()).toBe('fourth build');
  await told.getByRole('button', { name: 'Keep mine too' }).press('Enter');
  await dialog.waitFor({ state: 'detached' });
  await engines.getByText(/^Build fourth build · written beside it/).waitFor();
  await page.context().close();
});

test('engines of one name are told apart; more than a hundred combinations come in pages', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, '/combinations');
  const list = page.getByRole('list').filter({ has: page.getByRole('link', { name: /^Same, but/ }) });
  await expect.poll(() => list.getByRole('listitem').count()).toBe(6);
  const engine = page.getByRole('combobox', { name: 'Engine' });
  await engine.selectOption({ label: 'Hill-climb six, build before the rebuild' });
  await expect.poll(() => list.getByRole('listitem').count()).toBe(1);
  await page.waitForURL(/engine=/);

  for (let count = 0; count < 96; count += 1) {
    const sheetText = `name: Jetting ${count}\nshortBlock:\n  bore: unknown\n`;
    expect((await send('POST', '/combinations', { sheetText, engineName: 'Carburettor rig' })).status).toBe(
      201,
    );
  }
  await open(page, '/combinations');
  await page.getByText('Page 1 of 2').waitFor();
  expect(await list.getByRole('listitem').count()).toBe(100);
  await page.getByRole('button', { name: 'Next page' }).press('Enter');
  await page.waitForURL(/page=2/);
  await expect.poll(() => list.getByRole('listitem').count()).toBe(2);
  await engine.selectOption({ label: 'Carburettor rig' });
  await expect.poll(() => list.getByRole('listitem').count()).toBe(96);
  await close();
});
