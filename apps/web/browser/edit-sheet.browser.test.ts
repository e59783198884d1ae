import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { beside, faults } from './barriers.ts';
import { launch } from './launch.ts';
import { type RunningPullbook, startPullbook } from './start.ts';
import { tabTo } from './tab-to.ts';
import { open, watchedPage } from './watched-page.ts';

let pullbook: RunningPullbook;
let browser: Browser;
let from: string;

beforeAll(async () => {
  [pullbook, browser] = await Promise.all([startPullbook('demo'), launch()]);
  const rows = (await (await fetch(`${pullbook.address}/api/combinations`)).json()) as {
    id: string;
    name: string;
  }[];
  from = rows.find((one) => /^Naturally aspirated, b/.test(one.name))!.id;
});
afterAll(async () => {
  await browser?.close();
  await pullbook?.stop();
});

const hasFocus = (page: Page, name: string | RegExp) =>
  expect
    .poll(() =>
      page
        .getByRole('textbox', { name, exact: true })
        .evaluate((field) => field === document.activeElement)
        .catch(() => false),
    )
    .toBe(true);

test('the same as another, but: by keyboard alone, with what it changes told before it is kept', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, `/combinations/new?from=${from}`);
  const name = page.getByRole('textbox', { name: 'Name of the combination' });
  await tabTo(page, name);
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('Longest cam');

  await tabTo(page, page.getByRole('textbox', { name: 'Intake duration', exact: true }));
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('266');
  const cam = page.getByRole('region', { name: 'Cam', exact: true });
  await cam.getByText(/^266 has no unit/).waitFor();
  await page.keyboard.type(' deg');
  await cam.getByText('Changed: was 242 deg').waitFor();
  // The origin of the old value does not pass to the new one.
  const origin = cam.getByRole('combobox', { name: 'Where it comes from: Intake duration' });
  expect(await origin.inputValue()).toBe('not stated');
  await page.keyboard.press('Tab');
  await page.keyboard.type('data');
  expect(await origin.inputValue()).toBe('data sheet');

  // Enter leads from line to line, and at the end of the section adds the next one.
  await page.keyboard.press('Shift+Tab');
  for (const next of [
    'Exhaust duration',
    'Lift at which durations are told',
    'Intake valve lift',
    'Exhaust valve lift',
    'Lobe separation',
    'Intake centreline as fitted',
  ]) {
    await page.keyboard.press('Enter');
    await hasFocus(page, next);
  }
  await page.keyboard.type('107 deg');
  // What is not known is a tick, two stops on.
  await page.keyboard.press('Enter');
  await hasFocus(page, 'Advance');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Space');
  expect(await page.getByRole('textbox', { name: 'Advance', exact: true }).inputValue()).toBe('unknown');

  const changes = page.getByRole('region', { name: 'What this changes' });
  await expect.poll(() => changes.getByRole('listitem').count()).toBe(2);
  await changes.getByText(/intake duration/).waitFor();
  await tabTo(page, page.getByRole('button', { name: 'Keep this combination' }));
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { level: 1, name: 'Longest cam' }).waitFor();
  await page.getByText('Advance as fitted').waitFor();
  await close();
});

test('a flow sheet is pasted, a line of its own added, a line and a section taken off', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, `/combinations/new?from=${from}`);
  await page.getByRole('textbox', { name: 'Name of the combination' }).fill('Ported');
  const heads = page.getByRole('region', { name: 'Heads', exact: true });
  await heads
    .getByRole('combobox', { name: 'A line more under Heads' })
    .selectOption({ label: 'Flow sheet, intake' });
  await heads.getByRole('button', { name: 'Add the line' }).click();
  await heads.getByRole('textbox', { name: 'Points' }).fill('lift mm\tflow L/s\n2\t28\n4\t56\n6\t81');
  await heads.getByText(/^Test pressure must be told/).waitFor();
  await heads.getByRole('textbox', { name: /^Test pressure/ }).fill('28 inH2O');
  await heads
    .getByRole('combobox', { name: 'A line more under Heads' })
    .selectOption({ label: 'A line of its own …' });
  await heads.getByRole('textbox', { name: 'What the line is called' }).fill('seat angle');
  await page.keyboard.press('Enter');
  await hasFocus(page, 'seat angle');
  await page.keyboard.type('45 degrees');
  await heads.getByRole('button', { name: 'Take off: Chamber volume' }).click();
  await heads.getByText(/^Taken off: Heads, chamber volume/).waitFor();
  await page.getByRole('button', { name: 'Take off the whole section Accessories' }).click();

  await page.getByRole('radio', { name: 'As text' }).check();
  const text = page.getByRole('textbox', { name: 'The sheet' });
  await expect.poll(() => text.inputValue()).toMatch(/testPressure: 28 inH2O/);
  expect(await text.inputValue()).toMatch(/seat angle: 45 degrees/);
  expect(await text.inputValue()).not.toMatch(/accessories|chamberVolume/);
  await text.fill((await text.inputValue()).replace('45 degrees', '46 degrees'));
  await page.getByRole('radio', { name: 'Line by line' }).check();
  const own = page.getByRole('textbox', { name: 'seat angle' });
  await own.waitFor();
  expect(await own.inputValue()).toBe('46 degrees');
  await page.getByRole('button', { name: 'Keep this combination' }).click();
  await page.getByRole('heading', { level: 1, name: 'Ported' }).waitFor();
  const table = page.getByRole('region', { name: 'Figures: Flow sheet, intake' });
  await table.getByText('Of ideal flow').waitFor();
  expect(await table.getByRole('row').count()).toBe(4);
  await close();
});

test('a fault in the text is told with its line; line by line waits until it can be read', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, `/combinations/new?from=${from}`);
  await page.getByRole('radio', { name: 'As text' }).check();
  const text = page.getByRole('textbox', { name: 'The sheet' });
  await text.fill('schemaVersion: 1\nname: x\ncam:\n\tprofile: y\n');
  await page.getByRole('button', { name: /^line 4/ }).waitFor();
  await page.getByRole('radio', { name: 'Line by line' }).check();
  await page.getByText(/as soon as the text can be read/).waitFor();
  await text.fill('schemaVersion: 1\nname: x\ncam:\n  profile: y\n');
  await expect
    .poll(() =>
      page
        .getByRole('textbox', { name: 'Profile' })
        .inputValue()
        .catch(() => ''),
    )
    .toBe('y');
  await close();
});

test.each([
  ['light', { width: 1440, height: 900 }],
  ['dark', { width: 390, height: 844 }],
] as const)('no barrier on a sheet with faults, changes and a table: %s', async (colorScheme, viewport) => {
  const { page, close } = await watchedPage(browser, pullbook.address, { colorScheme, viewport });
  await open(page, `/combinations/new?from=${from}`);
  await page.getByRole('textbox', { name: 'Profile', exact: true }).fill('longest');
  const heads = page.getByRole('region', { name: 'Heads', exact: true });
  await heads
    .getByRole('combobox', { name: 'A line more under Heads' })
    .selectOption({ label: 'Flow sheet, intake' });
  await heads.getByRole('button', { name: 'Add the line' }).click();
  await page.getByText('Changed: was base cam').waitFor();
  await page.getByRole('textbox', { name: 'Bore', exact: true }).fill('96');
  await page.getByText(/^96 has no unit/).waitFor();
  expect(await faults(page)).toEqual([]);
  expect(await beside(page.locator('html'))).toBe(0);
  if (viewport.width === 390) {
    const small = await page.evaluate(() =>
      [
        ...document.querySelectorAll(
          'main button, main select, main input:not([type=radio], [type=checkbox])',
        ),
      ]
        .filter((one) => one.getBoundingClientRect().height > 0 && one.getBoundingClientRect().height < 44)
        .map((one) => one.outerHTML.slice(0, 120)),
    );
    expect(small).toEqual([]);
  }
  await close();
});
