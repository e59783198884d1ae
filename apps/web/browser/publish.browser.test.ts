import { readFile } from 'node:fs/promises';
import type { Browser, Download, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launch } from './launch.ts';
import { type RunningPullbook, startPullbook } from './start.ts';
import { open, watchedPage } from './watched-page.ts';

let pullbook: RunningPullbook;
let browser: Browser;
let trial: string;

const CAM = 'What does the longer cam add at the same pulley?';

beforeAll(async () => {
  [pullbook, browser] = await Promise.all([startPullbook('demo'), launch()]);
  const { rows } = (await (await fetch(`${pullbook.address}/api/trials`)).json()) as {
    rows: { id: string; question: string }[];
  };
  trial = rows.find(({ question }) => question === CAM)!.id;
});
afterAll(async () => {
  await browser?.close();
  await pullbook?.stop();
});

async function downloaded(page: Page, act: () => Promise<void>): Promise<{ name: string; bytes: Buffer }> {
  const [download] = await Promise.all([page.waitForEvent('download'), act()]);
  return { name: (download as Download).suggestedFilename(), bytes: await readFile(await download.path()) };
}

/** Lets a file fall on the page. */
async function drop(page: Page, name: string, bytes: Buffer): Promise<void> {
  const brought = await page.evaluateHandle(
    ([fileName, base64]) => {
      const transfer = new DataTransfer();
      const content = Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0));
      transfer.items.add(new File([content], fileName, { type: 'application/zip' }));
      return transfer;
    },
    [name, bytes.toString('base64')] as const,
  );
  await page.dispatchEvent('body', 'drop', { dataTransfer: brought });
}

const publish = (page: Page, name: string) =>
  downloaded(page, () => page.getByRole('button', { name, exact: true }).click());

test('a picture alone and a table leave the shop, are noted, and what is noted takes where it appeared', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, `/trials/${trial}`);
  await page.getByRole('button', { name: /^Publish/ }).click();
  await page.getByRole('heading', { level: 1, name: 'Publish' }).waitFor();

  const leaves = page.getByRole('region', { name: 'What will leave the shop' });
  expect(await leaves.getByRole('link').allTextContents()).toContain('Pull 4');
  await leaves.getByText(/^rejected/).waitFor();

  const stills = page.getByRole('region', { name: 'Stills' });
  // Beside its tick stands what the file will be: the drawn words say the gain.
  await stills
    .getByRole('listitem')
    .filter({ hasText: 'Gain' })
    .getByRole('img', { name: /hp on average/ })
    .getByText('clear above')
    .first()
    .waitFor();

  await stills.getByRole('checkbox', { name: /^Square/ }).check();
  await stills.getByRole('checkbox', { name: /^Wide 1920/ }).uncheck();
  const { name, bytes } = await publish(page, 'Publish it alone: Gain');
  expect(name).toMatch(/gain-1080x1080-light\.png$/);
  // Width and height of a PNG stand in its first chunk, IHDR (PNG specification, 11.2.2).
  expect([bytes.readUInt32BE(16), bytes.readUInt32BE(20)]).toEqual([1080, 1080]);

  const table = await publish(page, 'Publish the data as XLSX');
  // A workbook is a zip (ECMA-376, part 2): its first four bytes say so.
  expect([table.name.endsWith('.xlsx'), table.bytes.subarray(0, 4).toString('latin1')]).toEqual([
    true,
    'PK\u0003\u0004',
  ]);

  const before = page.getByRole('region', { name: 'Published before' }).getByRole('article');
  // Both say the same on the same day: the later one stands there, the other behind a press.
  await page.getByText(/^One more of .* that says the same$/).click();
  await expect.poll(() => before.count()).toBe(2);
  const noted = before.filter({ hasText: 'still' });
  await noted.getByRole('button', { name: 'It appeared …' }).click();
  const dialog = page.getByRole('dialog', { name: 'Where it appeared' });
  await dialog.getByLabel('Where', { exact: true }).fill('club magazine, page 12');
  await dialog.getByLabel('Day').fill('2026-05-02');
  await page.keyboard.press('Enter');
  await noted.getByText('club magazine, page 12').waitFor();
  await noted.getByRole('button', { name: 'Take out club magazine, page 12' }).click();
  await noted.getByText('club magazine, page 12').waitFor({ state: 'detached' });
  await close();
});

test('the running order by keyboard: a step out, one moved, a title; kept, and the clip runs by it', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, `/trials/${trial}/publish`);
  const order = page.getByRole('form', { name: 'Running order' });
  const title = order.getByRole('textbox', { name: 'Title of The gain' });
  await title.fill('What the cam gives');
  await title.press('Alt+ArrowUp');
  await order.getByText(/^Not kept yet/).waitFor();
  await expect.poll(() => title.evaluate((element) => element === document.activeElement)).toBe(true);
  await order.getByRole('checkbox', { name: 'What is asked' }).uncheck();
  await order.getByRole('textbox', { name: 'Seconds of The combination' }).fill('soon');
  await order.getByText(/how many seconds/).waitFor();
  expect(await order.getByRole('button', { name: 'Keep the order' }).isDisabled()).toBe(true);
  await order.getByRole('textbox', { name: 'Seconds of The combination' }).fill('2,5');
  await title.press('Enter');
  await order.getByText(/^Not kept yet/).waitFor({ state: 'detached' });

  await page.reload();
  const names = order.getByRole('checkbox');
  await names.first().waitFor();
  expect(await names.first().isChecked()).toBe(false);
  const titles = await order
    .getByRole('textbox', { name: /^Title of/ })
    .evaluateAll((all) => all.map((one) => one.getAttribute('aria-label')));
  expect(titles.slice(2, 5)).toEqual(['Title of The baseline', 'Title of The gain', 'Title of The change']);

  const clip = page.getByRole('region', { name: 'Clip' });
  const place = clip.getByRole('slider', { name: 'Place in the clip' });
  expect(await place.getAttribute('aria-valuetext')).toMatch(/^0\.0 s of .* s, The combination$/);
  await clip.getByRole('button', { name: 'Step on' }).click();
  // 2.5 s of the combination are over.
  expect(await place.getAttribute('aria-valuetext')).toMatch(/^2\.5 s of .* s, The baseline$/);
  await clip.getByRole('button', { name: 'Step on' }).click();
  await place.press('End');
  expect(await clip.getByRole('button', { name: 'Frame on' }).isDisabled()).toBe(true);
  await place.press('Home');
  await clip.getByRole('button', { name: 'Play' }).click();
  await expect.poll(async () => Number(await place.inputValue())).toBeGreaterThan(0);
  await clip.getByRole('button', { name: 'Pause' }).click();
  const stood = await place.inputValue();
  await clip.getByRole('button', { name: 'Frame on' }).click();
  expect(Number(await place.inputValue()) - Number(stood)).toBe(1);

  await order.getByRole('button', { name: 'Back to what was worked out' }).click();
  await expect.poll(() => names.first().isChecked()).toBe(true);
  await close();
});

test('the report is read first, in a page of its own; the bundle of the trial, dropped, is looked into and opened', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, `/trials/${trial}/publish`);
  const [report] = await Promise.all([
    page.waitForEvent('popup'),
    page.getByRole('link', { name: 'Read it first' }).click(),
  ]);
  await report.getByText(CAM).first().waitFor();
  await report.close();

  const { name, bytes } = await publish(page, 'Publish the data as Bundle');
  expect(name).toMatch(/\.zip$/);
  await drop(page, name, bytes);
  await page.getByRole('heading', { level: 1, name: 'Open a bundle' }).waitFor();
  const bundle = page.getByRole('region', { name });
  await bundle.getByText(CAM).waitFor();
  await bundle.getByText(/^Pulls: \d+, of which \d+ are in the book already$/).waitFor();
  await bundle.getByRole('button', { name: 'Open it as a trial' }).click();
  await page.waitForURL(`**/trials/${trial}`);
  await close();
});

test('a pull rejected after it was published: the act says so, and the erratum stands with what is now', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, `/trials/${trial}`);
  const answer = page.getByRole('heading', { level: 1 });
  const said = await answer.textContent();
  await page
    .getByRole('button', { name: /^Reject Pull/ })
    .first()
    .click();
  await page.getByRole('dialog').getByRole('textbox').first().fill('belt slipped');
  await page.keyboard.press('Enter');
  await expect.poll(() => answer.textContent()).not.toBe(said);
  await page.getByText(/publications? carr(ies|y)/).waitFor();
  await page.getByRole('link', { name: 'See what was said' }).click();
  await page.getByRole('heading', { level: 1, name: 'Publications' }).waitFor();
  const erratum = page.getByRole('article').filter({ hasText: CAM }).first();
  await erratum.getByText('Erratum', { exact: true }).waitFor();
  const row = erratum.getByRole('row').filter({ hasText: 'gain in average power' }).first();
  const [before, now] = await row.getByRole('cell').allTextContents();
  expect(before).toMatch(/hp/);
  expect(now).not.toBe(before);
  await page.keyboard.press('Control+z');
  await erratum.getByText('Erratum', { exact: true }).waitFor({ state: 'detached' });
  await close();
});
