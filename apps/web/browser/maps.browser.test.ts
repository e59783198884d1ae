import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launch } from './launch.ts';
import { type RunningPullbook, startPullbook } from './start.ts';
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

/** Three lines of a stage of our own invention: flow and head fall off as those of any do. */
function tableOf(): string {
  const rows = [30_000, 40_000, 50_000].flatMap((speed) =>
    [0.5, 0.62, 0.74, 0.86, 0.95, 1].map((share) => {
      const tip = (Math.PI * 0.105 * speed) / 60;
      const head = 0.62 * (1 - 0.55 * share ** 5) * tip ** 2;
      const ratio = (1 + head / (1005 * 298.15)) ** 3.5;
      return `${(0.36 * share * (speed / 50_000)).toFixed(4)},${ratio.toFixed(3)},${speed},${(76 - 40 * (share - 0.8) ** 2).toFixed(1)}`;
    }),
  );
  return [
    '# name: invented blower',
    '# reference pressure: 100 kPa',
    '# reference temperature: 25 °C',
    '# wheel exit diameter: 105 mm',
    'flow [kg/s],pressure ratio,speed [rpm],efficiency [%]',
    ...rows,
  ].join('\n');
}

test('an empty book says so; a table with a mixture in it is refused with its line; mended, it is in with its picture', async () => {
  const { page } = await watchedPage(browser, pullbook.address);
  await open(page, '/combinations');
  await page.getByRole('link', { name: 'Compressor maps' }).click();
  await page.getByText(/^None yet\. Without one a match takes a generic stage/).waitFor();
  const table = page.getByRole('textbox', { name: 'The table' });
  const lines = tableOf().split('\n');
  await table.fill([...lines.slice(0, 8), lines[8]!.replace(/[^,]+$/, '0.74'), ...lines.slice(9)].join('\n'));
  const refused = page.waitForResponse((answer) => answer.status() === 422 || answer.status() === 400);
  await page.getByRole('button', { name: 'Add the map' }).click();
  await refused;
  await page
    .getByRole('alert')
    .getByText(/line 9/)
    .first()
    .waitFor();
  await table.fill(tableOf());
  await page.getByRole('button', { name: 'Add the map' }).click();
  await page.getByRole('heading', { level: 1, name: 'invented blower' }).waitFor();
  await page.getByRole('region', { name: 'The map' }).getByRole('img').waitFor();
  expect(
    await page
      .getByRole('region', { name: /^How well it meets/ })
      .getByRole('listitem')
      .count(),
  ).toBeGreaterThan(1);
  // Not watched to its end: the refusal is something that it asked for and did not get.
  await page.context().close();
});

test('one rated point gives a map that is marked assumed; renamed with a reason', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, '/maps');
  await page.getByRole('radio', { name: 'One rated point' }).check();
  await page.getByRole('textbox', { name: 'Name' }).fill('rated blower');
  await page.getByRole('textbox', { name: 'Air flow' }).fill('66 lb/min');
  await page.getByRole('textbox', { name: 'Pressure ratio' }).fill('2.0');
  await page.getByRole('textbox', { name: 'Impeller speed' }).fill('50000 rpm');
  await page.getByRole('textbox', { name: 'Efficiency there' }).fill('74 %');
  await page.getByRole('button', { name: 'Add the map' }).click();
  await page.getByRole('heading', { level: 1, name: 'rated blower' }).waitFor();
  await page
    .getByText(/assumed/i)
    .first()
    .waitFor();
  await page.getByRole('button', { name: 'Name and notes' }).click();
  await page.getByRole('textbox', { name: 'Notes' }).fill('from its maker’s leaflet');
  await page.getByRole('textbox', { name: 'Reason' }).fill('said where it is from');
  await page.keyboard.press('Enter');
  await page.getByRole('region', { name: 'What it is' }).getByText('from its maker’s leaflet').waitFor();
  await page.getByRole('link', { name: 'Compressor maps' }).click();
  await page.getByRole('link', { name: 'rated blower' }).waitFor();
  await close();
});
