import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CURSOR_KEYS, WINDOW_KEYS } from '../src/keys/cursor-keys.ts';
import { barriers, beside, TELEPHONE } from './barriers.ts';
import { launch } from './launch.ts';
import { type RunningPullbook, startPullbook } from './start.ts';
import { tabTo } from './tab-to.ts';
import { open, watchedPage } from './watched-page.ts';

let pullbook: RunningPullbook;
let browser: Browser;
let trial: string;
let pull: string;

beforeAll(async () => {
  [pullbook, browser] = await Promise.all([startPullbook('demo'), launch()]);
  const rows = async (what: string) => {
    const answer = await fetch(`${pullbook.address}/api/${what}`);
    return ((await answer.json()) as { rows: Record<string, string>[] }).rows;
  };
  trial = `/trials/${(await rows('trials')).find(({ question }) => /longer cam add/i.test(question!))!.id}`;
  pull = `/pulls/${(await rows('pulls')).find(({ name }) => name === 'Pull 9')!.id}`;
});
afterAll(async () => {
  await browser?.close();
  await pullbook?.stop();
});

const cursorOf = (page: Page) => page.getByRole('slider', { name: /^Cursor, Engine speed/ }).first();
const reachOf = async (page: Page) => [
  Number(await cursorOf(page).getAttribute('aria-valuemin')),
  Number(await cursorOf(page).getAttribute('aria-valuemax')),
];
const searchOf = (page: Page) => new URL(page.url()).searchParams;
const headline = (page: Page) => page.getByRole('heading', { level: 1 }).textContent();

/** Presses the mouse at one share of the cursor's box and lets it go at another. */
async function dragAcross(page: Page, from: number, to: number) {
  const box = (await cursorOf(page).boundingBox())!;
  const at = (share: number) => [box.x + share * box.width, box.y + box.height / 3] as const;
  await page.mouse.move(...at(from));
  await page.mouse.down();
  await page.mouse.move(...at((from + to) / 2));
  await page.mouse.move(...at(to));
  await page.mouse.up();
}

describe('zoom on a trial', () => {
  test('by mouse: drag across, zoom, kept over a reload, gone by going back', async () => {
    const { page, close } = await watchedPage(browser, pullbook.address);
    await open(page, trial);
    await cursorOf(page).waitFor();
    const whole = await reachOf(page);
    await dragAcross(page, 0.4, 0.7);
    await page.getByText(/^Marked: /).waitFor();
    await page.getByRole('button', { name: 'Zoom to it' }).click();
    await page.getByText(/^Shown: .* of /).waitFor();
    const [low, high] = await reachOf(page);
    expect(low).toBeGreaterThan(whole[0]! + 1000);
    expect(high).toBeLessThan(whole[1]! - 700);
    await page.reload();
    await page.getByText(/^Shown: .* of /).waitFor();
    expect(await reachOf(page)).toEqual([low, high]);
    const picture = await page.getByRole('img', { name: /^Shown: / }).getAttribute('aria-label');
    expect(picture).toContain('rpm of');
    await page.goBack();
    await expect.poll(() => reachOf(page)).toEqual(whole);
    await close();
  });

  test('by keyboard: mark from here, up to here, zoom, all again', async () => {
    const { page, close } = await watchedPage(browser, pullbook.address);
    await open(page, trial);
    await cursorOf(page).waitFor();
    const whole = await reachOf(page);
    await page.keyboard.press('c');
    await page.keyboard.press('Home');
    for (let step = 0; step < 2; step += 1) await page.keyboard.press('Shift+ArrowRight');
    const from = Number(await cursorOf(page).getAttribute('aria-valuenow'));
    await page.keyboard.press('[');
    await page.keyboard.press('Shift+ArrowRight');
    const to = Number(await cursorOf(page).getAttribute('aria-valuenow'));
    await page.keyboard.press(']');
    await page.keyboard.press('z');
    await expect.poll(() => reachOf(page)).toEqual([from, to]);
    expect(await cursorOf(page).evaluate((one) => one === document.activeElement)).toBe(true);
    await page.keyboard.press('0');
    await expect.poll(() => reachOf(page)).toEqual(whole);
    await close();
  });
});

describe('the window of the averages on the chart', () => {
  test('a marked range becomes it, by one key', async () => {
    const { page, close } = await watchedPage(browser, pullbook.address);
    await open(page, trial);
    await cursorOf(page).waitFor();
    const before = await headline(page);
    await page.keyboard.press('c');
    await page.keyboard.press('End');
    await page.keyboard.press(']');
    await page.keyboard.press('Shift+ArrowLeft');
    await page.keyboard.press('[');
    await page.keyboard.press('a');
    await expect.poll(() => searchOf(page).get('from')).toBe('6000');
    expect(searchOf(page).get('to')).toBe('6500');
    await expect.poll(() => headline(page)).not.toBe(before);
    await page.getByRole('button', { name: 'Keep for this trial' }).waitFor();
    await close();
  });

  test('its ends are handles: arrows step 50 rpm, Shift 500, the mouse drags', async () => {
    const { page, close } = await watchedPage(browser, pullbook.address);
    await open(page, trial);
    const low = page.getByRole('slider', { name: 'Averages, lower end' });
    await low.waitFor();
    const first = Number(await low.getAttribute('aria-valuenow'));
    await tabTo(page, low);
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Shift+ArrowRight');
    expect(Number(await low.getAttribute('aria-valuenow'))).toBe(first + 550);
    await expect.poll(() => searchOf(page).get('from')).toBe(`${first + 550}`);
    expect(await low.evaluate((one) => one === document.activeElement)).toBe(true);

    const box = (await low.boundingBox())!;
    expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(44);
    await page.mouse.move(box.x + 22, box.y + 22);
    await page.mouse.down();
    await page.mouse.move(box.x + 82, box.y + 22, { steps: 4 });
    await page.mouse.up();
    await expect.poll(() => Number(searchOf(page).get('from'))).toBeGreaterThan(first + 550);
    expect(Number(searchOf(page).get('from')) % 50).toBe(0);
    await close();
  });
});

test('combinations and pulls are hidden by key and by button, in the address, and the answer stays', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, trial);
  await cursorOf(page).waitFor();
  const before = await headline(page);
  const curves = () => page.getByRole('img').first().locator('path[fill=none]').count();
  const all = await curves();
  await page.keyboard.press('c');
  await page.keyboard.press('2');
  await page.getByText(/Hidden on the chart: B\. The answer counts them all the same\./).waitFor();
  expect(searchOf(page).get('hide')).toBe('B');
  expect(await curves()).toBeLessThan(all);
  expect(await headline(page)).toBe(before);
  await page.reload();
  await page.getByText(/Hidden on the chart: B\./).waitFor();
  await page.getByRole('button', { name: /^A Hide: .* on the chart$/ }).click();
  await page.getByText(/Hidden on the chart: A, B\./).waitFor();
  await page.getByText('hidden on the chart', { exact: false }).first().waitFor();
  await page.getByRole('button', { name: 'Show all' }).click();
  await expect.poll(curves).toBe(all);
  await page
    .getByRole('button', { name: /^Hide on the chart: Pull / })
    .first()
    .click();
  await page.getByText(/Hidden on the chart: Pull /).waitFor();
  expect(await headline(page)).toBe(before);
  await close();
});

describe('a recording', () => {
  test('over engine speed, with exact figures, kept over a reload', async () => {
    const { page, close } = await watchedPage(browser, pullbook.address);
    await open(page, pull);
    const card = page.getByRole('region', { name: 'As recorded' });
    await card.getByRole('slider', { name: 'Cursor, Time' }).waitFor();
    await card.getByText('What was cut, and why').waitFor();
    await card.getByRole('button', { name: 'Over engine speed' }).click();
    const cursor = card.getByRole('slider', { name: 'Cursor, Engine speed' });
    await cursor.focus();
    await page.keyboard.press('ArrowRight');
    expect(await cursor.getAttribute('aria-valuetext')).toMatch(/rpm; .*Torque [\d.]+ lb-ft/);
    await page.reload();
    await cursor.waitFor();
    await close();
  });

  test('the window is set on it with a reason, undone, and found again', async () => {
    const { page, close } = await watchedPage(browser, pullbook.address);
    await open(page, `${pull}?over=speed`);
    const card = page.getByRole('region', { name: 'As recorded' });
    const read = page.getByRole('region', { name: 'How it is read' });
    const low = card.getByRole('slider', { name: 'Counted, lower end' });
    await low.focus();
    await page.keyboard.press('Shift+ArrowRight');
    await card.getByText(/^Count only [\d,]+ to [\d,]+/).waitFor();
    const asked = await low.getAttribute('aria-valuetext');
    expect(await card.getByLabel('Reason').inputValue()).toBe('window set on the chart');
    const asFound = await low.getAttribute('aria-valuemin');
    await card.getByRole('button', { name: 'Leave it' }).click();
    expect(Number(await low.getAttribute('aria-valuenow'))).toBe(Number(asFound));
    await low.focus();
    await page.keyboard.press('Shift+ArrowRight');
    await card.getByRole('button', { name: 'Count only this' }).click();
    await read.getByText(`set by hand, ${asked!.replace(' rpm', '')} to`).waitFor();
    await card.getByRole('button', { name: /^Undo: back to the sweep as found/ }).click();
    await read.getByText('the sweep as found').waitFor();

    await low.focus();
    await page.keyboard.press('Shift+ArrowRight');
    await card.getByRole('button', { name: 'Count only this' }).click();
    await card.getByRole('button', { name: 'Find the window again' }).click();
    await read.getByText('the sweep as found').waitFor();
    await close();
  });

  test('channels are chosen from a list, and the choice stands in the address', async () => {
    const { page, close } = await watchedPage(browser, pullbook.address);
    await open(page, pull);
    const card = page.getByRole('region', { name: 'As recorded' });
    await card.locator('summary').click();
    await card.getByLabel('Only names with').fill('torque');
    const torque = card.getByRole('checkbox', { name: /torque/i });
    expect(await torque.isChecked()).toBe(true);
    await torque.click();
    await expect.poll(() => searchOf(page).get('channels')).not.toBeNull();
    await expect.poll(() => torque.isChecked()).toBe(false);
    await card.getByRole('button', { name: 'Those that mean something' }).click();
    await expect.poll(() => torque.isChecked()).toBe(true);
    await close();
  });
});

test('every key of the charts is in the list of keys', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, trial);
  await page.keyboard.press('?');
  const overlay = page.getByRole('dialog', { name: 'Keys' });
  for (const { does } of [...CURSOR_KEYS, ...WINDOW_KEYS]) {
    await overlay.getByText(does, { exact: true }).waitFor();
  }
  await page.keyboard.press('Escape');
  await close();
});

describe('on telephone and tablet nothing scrolls sideways, targets are 44 px, no barrier with a range marked', () => {
  test.each([
    ['a trial', () => trial],
    ['a recording', () => `${pull}?over=speed`],
  ])('%s', async (_, path) => {
    const { page, close } = await watchedPage(browser, pullbook.address, {
      ...TELEPHONE,
      // A colour on its way to another has no contrast to be judged by.
      reducedMotion: 'reduce',
    });
    await open(page, path());
    await cursorOf(page).focus();
    for (const key of ['Home', '[', 'PageUp', ']']) await page.keyboard.press(key);
    // Turned from one to the next, with the range marked; a telephone, a tablet upright and across.
    for (const [width, height] of [
      [390, 844],
      [820, 1180],
      [1180, 820],
    ] as const) {
      await page.setViewportSize({ width, height });
      await page.waitForFunction((wide) => innerWidth === wide, width);
      await page.getByText(/^Marked: /).waitFor();
      await expect.poll(() => beside(page.locator('html'))).toBe(0);
      const small = await page
        .locator('main button:visible, main [role=slider]:visible')
        .evaluateAll((all) =>
          all
            .filter((one) => one.getBoundingClientRect().height < 44)
            .map((one) => `${one.getBoundingClientRect().height} ${one.textContent}`),
        );
      expect(small).toEqual([]);
      expect(await barriers(page)).toEqual([]);
    }
    await close();
  });
});

test('a finger marks a range once it is told to', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address, {
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
  });
  await open(page, trial);
  await page.getByRole('button', { name: 'Mark a range' }).tap();
  await cursorOf(page).scrollIntoViewIfNeeded();
  const box = (await cursorOf(page).boundingBox())!;
  const touch = await page.context().newCDPSession(page);
  const y = box.y + 60;
  const finger = (type: 'touchStart' | 'touchMove' | 'touchEnd', share: number) =>
    touch.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: type === 'touchEnd' ? [] : [{ x: box.x + share * box.width, y }],
    });
  await finger('touchStart', 0.3);
  for (const share of [0.4, 0.5, 0.6]) await finger('touchMove', share);
  await finger('touchEnd', 0.6);
  await page.getByText(/^Marked: /).waitFor();
  await page.getByRole('button', { name: 'Zoom to it' }).tap();
  await page.getByText(/^Shown: /).waitFor();
  await close();
});
