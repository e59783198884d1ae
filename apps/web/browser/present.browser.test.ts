import type { PresentedStep } from '@pullbook/views/publish';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { faults } from './barriers.ts';
import { launch } from './launch.ts';
import { type RunningPullbook, startPullbook } from './start.ts';
import { open, watchedPage } from './watched-page.ts';

let pullbook: RunningPullbook;
let browser: Browser;
let trial: string;
let steps: PresentedStep[];

beforeAll(async () => {
  [pullbook, browser] = await Promise.all([startPullbook('demo'), launch()]);
  const ask = async (path: string) => (await fetch(`${pullbook.address}/api/trials${path}`)).json();
  const { rows } = (await ask('')) as { rows: { id: string; question: string }[] };
  const { id } = rows.find(({ question }) => /longer cam add/i.test(question))!;
  trial = `/trials/${id}`;
  steps = ((await ask(`/${id}/presentation?units=us&decimal=.`)) as { steps: PresentedStep[] }).steps;
});
afterAll(async () => {
  await browser?.close();
  await pullbook?.stop();
});

const stepOf = (page: Page) => page.locator('main').getAttribute('data-step');
const ids = () => steps.map(({ id }) => id);

/** Opens the presentation at a step, drawn. */
async function present(page: Page, step: string): Promise<void> {
  await page.goto(`${trial}/present?step=${step}`);
  await page.locator('main canvas').waitFor();
  await expect.poll(() => paintedShare(page)).toBeGreaterThan(0.01);
}

/** How much of the canvas is not its ground, by every fourth pixel of every fourth row. */
const paintedShare = (page: Page) =>
  page.evaluate(() => {
    const shown = document.querySelector('canvas')!;
    const [width, height] = [Math.ceil(shown.width / 4), Math.ceil(shown.height / 4)];
    const pen = new OffscreenCanvas(width, height).getContext('2d')!;
    pen.imageSmoothingEnabled = false;
    pen.drawImage(shown, 0, 0, width, height);
    const { data } = pen.getImageData(0, 0, width, height);
    let painted = 0;
    for (let at = 0; at < data.length; at += 4) {
      if (data[at + 3] === 255 && Math.abs(data[at]! - data[0]!) > 24) painted += 1;
    }
    return painted / (width * height);
  });

test('letters on the canvas are as wide as they were laid out', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await present(page, ids()[0]!);
  const [shown, free] = await page.evaluate(() =>
    [document.querySelector('canvas')!, new OffscreenCanvas(9, 9)].map((canvas) => {
      const pen = canvas.getContext('2d') as CanvasRenderingContext2D;
      pen.font = '400 27px Inter';
      return pen.measureText('SAE J1349, factor 1.019 to 1.026 · 14 March 2026').width;
    }),
  );
  expect(shown).toBeCloseTo(free!, 3);
  await close();
});

test('from the trial by its key, step by step by what keyboards and clickers send, nothing else on the screen, and back', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, trial);
  await page.keyboard.press('s');
  await expect.poll(() => stepOf(page)).toBe(ids()[0]);
  expect(await page.getByRole('navigation').count()).toBe(0);
  expect(await page.getByRole('contentinfo').count()).toBe(0);
  for (const [key, step] of [
    ['PageDown', 1],
    [' ', 2],
    ['ArrowRight', 3],
    ['PageUp', 2],
    ['Backspace', 1],
    ['End', steps.length - 1],
    ['Enter', steps.length - 1],
    ['Home', 0],
  ] as const) {
    await page.keyboard.press(key);
    await expect.poll(() => stepOf(page)).toBe(ids()[step]);
  }
  await page.keyboard.press('PageDown');
  await expect.poll(() => new URL(page.url()).searchParams.get('step')).toBe(ids()[1]);
  await page.reload();
  await expect.poll(() => stepOf(page)).toBe(ids()[1]);
  await page.keyboard.press('Escape');
  await page.getByRole('navigation').first().waitFor();
  expect(new URL(page.url()).pathname).toBe(trial);
  await close();
});

test('the pointer shows the very figures of the answer, large; a second speed is held beside the first', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await present(page, 'gain');
  const { cursor } = steps.find(({ id }) => id === 'gain')!;
  const figuresAt = (node: number) => [
    ...cursor!.rows.flatMap(({ cells }) => cells.map((own) => own[node]!)),
    ...(cursor!.gains ?? []).map(({ cells }) => cells[node]!),
  ];
  const shown = page.locator('main table tbody tr');
  await page.mouse.move(600, 450);
  await shown.first().waitFor();
  const speed = Number((await shown.first().locator('th').textContent())!.replace(/\D/g, ''));
  const node = cursor!.at.indexOf(speed);
  expect(node).toBeGreaterThan(0);
  const row = (await shown.first().textContent())!;
  for (const figure of figuresAt(node).filter((one) => one !== '')) expect(row).toContain(figure);
  const size = await shown
    .first()
    .locator('td')
    .first()
    .evaluate((cell) => getComputedStyle(cell).fontSize);
  expect(Number.parseFloat(size)).toBeGreaterThanOrEqual(32);

  await page.keyboard.press('h');
  await page.keyboard.press('Shift+ArrowRight');
  await expect.poll(() => shown.count()).toBe(2);
  const second = (await shown.nth(1).textContent())!;
  for (const figure of figuresAt(node + 1).filter((one) => one !== '')) expect(second).toContain(figure);
  expect(await shown.first().textContent()).toContain('held');
  expect(await faults(page)).toEqual([]);
  await close();
});

test('it draws itself, darkens, and goes on when the server is gone', async () => {
  const context = await browser.newContext({
    baseURL: pullbook.address,
    viewport: { width: 1280, height: 720 },
  });
  const page = await context.newPage();
  await present(page, 'baseline');
  await context.setOffline(true);
  await page.keyboard.press('End');
  await expect.poll(() => stepOf(page)).toBe(ids().at(-1));
  await page.keyboard.press('Home');
  for (const id of ids()) {
    await expect.poll(() => stepOf(page)).toBe(id);
    await expect.poll(() => paintedShare(page)).toBeGreaterThan(0.005);
    await page.keyboard.press('PageDown');
  }
  const middle = () =>
    page.evaluate(() => getComputedStyle(document.elementFromPoint(640, 360)!).backgroundColor);
  await page.keyboard.press('.');
  await expect.poll(middle).toBe('rgb(0, 0, 0)');
  await page.keyboard.press('PageUp');
  await expect.poll(middle).not.toBe('rgb(0, 0, 0)');
  expect(await stepOf(page)).toBe(ids().at(-1));

  // Drawn again, there is less of the curves at first than when it stands.
  await page.keyboard.press('Home');
  for (let count = ids().indexOf('baseline'); count > 0; count -= 1) await page.keyboard.press('PageDown');
  const begun = await paintedShare(page);
  await expect.poll(() => paintedShare(page)).toBeGreaterThan(begun);
  await context.close();
});

test('a second window shows what the first does, and the first then tells the speaker what comes', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await present(page, ids()[1]!);
  const [second] = await Promise.all([page.context().waitForEvent('page'), page.keyboard.press('2')]);
  await expect.poll(() => stepOf(second)).toBe(ids()[1]);
  const notes = page.getByRole('complementary', { name: 'For who speaks' });
  await notes.waitFor();
  await page.keyboard.press('PageDown');
  await expect.poll(() => stepOf(second)).toBe(ids()[2]);
  expect(await notes.textContent()).toContain(steps[3]!.still.headline);
  await second.keyboard.press('PageDown');
  await expect.poll(() => stepOf(page)).toBe(ids()[3]);
  await second.close();
  await expect.poll(() => notes.count()).toBe(0);
  await close();
});

test('by touch: taps and swipes on a telephone, figures where a finger rests', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address, {
    viewport: { width: 390, height: 844 },
    hasTouch: true,
  });
  await present(page, ids()[0]!);
  await page.touchscreen.tap(350, 400);
  await expect.poll(() => stepOf(page)).toBe(ids()[1]);
  await page.touchscreen.tap(40, 400);
  await expect.poll(() => stepOf(page)).toBe(ids()[0]);
  await present(page, 'gain');
  await page.touchscreen.tap(195, 420);
  await expect.poll(() => page.locator('main dl dd').count()).toBeGreaterThan(1);
  // At the lower edge a finger calls the buttons, and presses them.
  await page.touchscreen.tap(195, 820);
  const leave = page.getByRole('button', { name: /^Leave/ });
  await expect.poll(() => leave.evaluate((one) => getComputedStyle(one.parentElement!).opacity)).toBe('1');
  expect((await leave.boundingBox())!.height).toBeGreaterThanOrEqual(44);
  await leave.tap();
  await expect.poll(() => new URL(page.url()).pathname).toBe(trial);
  await close();
});
