import { readdir, readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launch } from './launch.ts';
import { type RunningPullbook, startPullbook } from './start.ts';
import { open, watchedPage } from './watched-page.ts';

const samples = fileURLToPath(new URL('../../../samples/open-data/', import.meta.url));

let pullbook: RunningPullbook;
let browser: Browser;
let files: { name: string; text: string }[];

beforeAll(async () => {
  const names = (await readdir(samples))
    .filter((name) => name.endsWith('.csv'))
    .toSorted()
    .slice(0, 2);
  files = await Promise.all(
    names.map(async (name) => ({ name, text: await readFile(samples + name, 'utf8') })),
  );
  [pullbook, browser] = await Promise.all([startPullbook('empty'), launch()]);
});
afterAll(async () => {
  await browser?.close();
  await pullbook?.stop();
});

/** Lets files fall on the page as a hand would. */
async function drop(page: Page, fallen: { name: string; text: string }[]): Promise<void> {
  const dataTransfer = await page.evaluateHandle((list) => {
    const carried = new DataTransfer();
    for (const { name, text } of list) carried.items.add(new File([text], name, { type: 'text/csv' }));
    return carried;
  }, fallen);
  await page.dispatchEvent('body', 'dragover', { dataTransfer });
  await page.dispatchEvent('body', 'drop', { dataTransfer });
}

test('two files of open data fall on an empty book and end as a 4K still', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, '/');
  await page.getByText('Add the pulls you have').waitFor();
  await drop(page, files);
  await page.getByRole('heading', { level: 1, name: 'Add pulls' }).waitFor();

  for (const [place, { name }] of files.entries()) {
    const card = page.getByRole('region', { name, exact: true });
    await card.getByText('What the columns are').waitFor();
    if (place === 0) {
      await card.getByLabel('Pressure', { exact: true }).fill('98.2 kPa');
      await card.getByLabel('Temperature').fill('30 C');
      await card.getByLabel('Humidity').fill('45 %');
      await card.getByLabel('Set-up').fill('first fitting');
      await card.getByLabel('Already corrected?').selectOption('observed');
      await card.getByText('More about this pull').click();
      await card.getByLabel('Jets').fill('82 and 88');
      await card.getByLabel('A note').fill('belt dusty');
      await card.getByRole('button', { name: 'Something happened at a speed' }).click();
      await card.getByLabel('At', { exact: true }).fill('3000 rpm');
      await card.getByRole('textbox', { name: 'What happened' }).fill('throttle lifted');
    } else {
      await card.getByRole('button', { name: 'Same as the last' }).click();
      expect(await card.getByLabel('Pressure', { exact: true }).inputValue()).toBe('98.2 kPa');
      expect(await card.getByLabel('Jets').inputValue()).toBe('82 and 88');
      // What happened in the other pull did not happen in this one.
      expect(await card.getByLabel('A note').inputValue()).toBe('');
      expect(await card.getByLabel('What happened', { exact: true }).count()).toBe(0);
      expect(await card.getByLabel('Already corrected?').inputValue()).toBe('observed');
    }
    await card.getByRole('button', { name: 'New combination from a sheet …' }).click();
    const dialog = page.getByRole('dialog', { name: 'A new combination' });
    const engine = dialog.getByLabel('Engine', { exact: true });
    await engine.selectOption({ label: 'Another engine …' });
    await dialog.getByLabel('Name of the engine').fill(`Engine of ${name}`);
    await dialog.getByRole('button', { name: 'Keep this combination' }).click();
    await dialog.waitFor({ state: 'detached' });
  }
  await page.getByRole('button', { name: 'Add these 2 files' }).click();
  await page.getByText(/pulls are in the book/).waitFor();
  await page.getByRole('link', { name: 'Compare them' }).click();

  await page.getByLabel('What do you want to find out?').fill('How do these two engines compare?');
  await page.getByRole('radio', { name: /A survey/ }).check();
  await page.getByRole('button', { name: 'Start the trial' }).click();
  await page.waitForURL(/\/trials\/(?!new)/);
  await page.getByRole('slider', { name: 'Cursor, Engine speed' }).waitFor();
  await page.getByRole('heading', { level: 1, name: /SAE J1349/ }).waitFor();
  await page
    .getByText(/factor 1\.0\d\d/iu)
    .first()
    .waitFor();

  await page.getByRole('button', { name: 'Publish' }).click();
  await page.getByRole('checkbox', { name: /4K/ }).check();
  await page.getByRole('checkbox', { name: /^Wide 1920/ }).uncheck();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page
      .getByRole('button', { name: /^Publish it alone/ })
      .first()
      .click(),
  ]);
  const png = await readFile((await download.path())!);
  expect(png.subarray(1, 4).toString('latin1')).toBe('PNG');
  // Width and height of a PNG stand in its first chunk, IHDR (PNG specification, 11.2.2).
  expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([3840, 2160]);
  await page.getByRole('link', { name: 'Back to the trial' }).click();

  await page
    .getByRole('region', { name: 'Evidence' })
    .getByRole('listitem')
    .filter({ hasText: /^A/ })
    .getByRole('link')
    .click();
  for (const said of ['82 and 88', '3,000 rpm: throttle lifted', /belt dusty$/]) {
    await page.getByText(said).waitFor();
  }
  await close();
});

test('a file that the book has already is said to be', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, '/');
  await drop(page, files.slice(0, 1));
  await page.getByText(/in the book already/).waitFor();
  expect(await page.getByRole('button', { name: /^Add th/ }).count()).toBe(0);
  await close();
});

test('what cannot be read says why, and the page goes on', async () => {
  const { page } = await watchedPage(browser, pullbook.address);
  await open(page, '/add');
  await drop(page, [
    { name: 'empty.csv', text: '' },
    { name: 'one-row.csv', text: 'rpm,torque (N·m)\n' },
  ]);
  for (const name of ['empty.csv', 'one-row.csv']) {
    const card = page.getByRole('region', { name, exact: true });
    expect(await card.getByRole('alert').textContent()).toMatch(/\w+ .{20}/);
  }
  expect(await page.getByRole('button', { name: /^Add th/ }).count()).toBe(0);
  await page.context().close();
});

test('a wrong unit on a sheet is shown with its line', async () => {
  const { page } = await watchedPage(browser, pullbook.address);
  await open(page, '/combinations/new');
  await page.getByRole('radio', { name: 'As text' }).check();
  const sheet = page.getByRole('textbox', { name: 'The sheet' });
  await sheet.fill(
    (await sheet.inputValue())
      .replace('name: ""', 'name: Wrong unit')
      .replace('bore: unknown', 'bore: 96 kg'),
  );
  await page.getByLabel('Engine', { exact: true }).selectOption({ label: 'Another engine …' });
  await page.getByLabel('Name of the engine').fill('Any');
  await page.getByRole('button', { name: 'Keep this combination' }).click();
  const alert = page.getByRole('alert');
  await alert.waitFor();
  expect(await alert.textContent()).toMatch(/96 kg/);
  await alert.getByRole('button', { name: /line 6/ }).click();
  const selected = await sheet.evaluate((field: HTMLTextAreaElement) =>
    field.value.slice(field.selectionStart, field.selectionEnd),
  );
  expect(selected.trim()).toBe('bore: 96 kg');
  await page.context().close();
});

test('a package is declared on the spot, ticked, and stands on the new combination', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, '/combinations/new');
  await page.getByText('Packages fitted').click();
  await page.getByLabel('A new package').fill('First blower');
  await page.getByLabel('Its parts').fill('supercharger, drive');
  await page.getByRole('button', { name: 'Declare it' }).click();
  const box = page.getByRole('checkbox', { name: /First blower/ });
  await box.waitFor();
  expect(await box.isChecked()).toBe(true);
  await page.getByRole('textbox', { name: 'Name of the combination' }).fill('With a package');
  await page.getByLabel('Engine', { exact: true }).selectOption({ label: 'Another engine …' });
  await page.getByLabel('Name of the engine').fill('Six');
  await page.getByRole('button', { name: 'Keep this combination' }).click();
  await page.getByRole('heading', { name: 'With a package' }).waitFor();
  expect(await page.getByText('First blower').count()).toBeGreaterThan(0);
  await close();
});
