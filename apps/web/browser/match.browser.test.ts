import type { CombinationPage } from '@pullbook/views';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launch } from './launch.ts';
import { type RunningPullbook, startPullbook } from './start.ts';
import { tabTo } from './tab-to.ts';
import { open, watchedPage } from './watched-page.ts';

let pullbook: RunningPullbook;
let browser: Browser;
let trial: string;

beforeAll(async () => {
  [pullbook, browser] = await Promise.all([startPullbook('demo'), launch()]);
  trial = await idOf('trials', /longer cam add at the same pulley/);
});
afterAll(async () => {
  await browser?.close();
  await pullbook?.stop();
});

interface Row {
  id: string;
  name?: string;
  question?: string;
}

const ask = async (path: string) => (await fetch(`${pullbook.address}/api${path}`)).json();

async function idOf(list: string, called: RegExp): Promise<string> {
  const all = (await ask(`/${list}`)) as Row[] | { rows: Row[] };
  const rows = Array.isArray(all) ? all : all.rows;
  return rows.find(({ name, question }) => called.test(name ?? question ?? ''))!.id;
}

async function send(path: string, body: unknown): Promise<{ id: string }> {
  const answer = await fetch(`${pullbook.address}/api${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin: pullbook.address },
    body: JSON.stringify(body),
  });
  expect(answer.status, await answer.clone().text()).toBeLessThan(300);
  return (await answer.json()) as { id: string };
}

const chart = (page: Page) => page.getByRole('img').first();
const map = (page: Page) => page.getByRole('region', { name: 'On the compressor’s map' });
/** Where the marks of the cursor sit on the map: the lines of their hairs. */
const marks = (page: Page) =>
  map(page)
    .locator('svg[aria-hidden] line')
    // Hairs are level or upright; the link between what is compared is neither.
    .evaluateAll((lines) =>
      lines
        .filter(
          (line) =>
            line.getAttribute('x1') === line.getAttribute('x2') ||
            line.getAttribute('y1') === line.getAttribute('y2'),
        )
        .map((line) => `${line.getAttribute('x1')} ${line.getAttribute('y1')}`),
    );
/** The link between the points of what is compared, at the cursor's engine speed: its line and its head. */
const link = (page: Page) => map(page).locator('svg[aria-hidden] > path[fill=none]');
const blowerPulley = (page: Page) => page.getByRole('textbox', { name: 'Blower pulley' });
/** The figures at the cursor in one line. */
const numbers = (page: Page) => page.getByRole('region', { name: /^At \d/ }).textContent();
const tried = (page: Page) => new URL(page.url()).searchParams.get('blowerPulleyDiameter');

test('M on the trial; the marks on the map follow the cursor of the panels, by key and by mouse', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, `/trials/${trial}`);
  await page.keyboard.press('m');
  await map(page).getByRole('img').waitFor();
  expect(new URL(page.url()).pathname).toBe(`/trials/${trial}/match`);
  await page.keyboard.press('c');
  await page.keyboard.press('Home');
  const first = await marks(page);
  // Two combinations, a level and an upright hair each.
  expect(first).toHaveLength(4);
  await page.keyboard.press('End');
  const last = await marks(page);
  expect(last).toHaveLength(4);
  // At the highest engine speed the two are apart, and a link shows which way it went.
  expect(await link(page).count()).toBe(1);
  for (const [index, place] of last.entries()) expect(place).not.toBe(first[index]);
  const box = (await chart(page).boundingBox())!;
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 3);
  await expect.poll(() => marks(page)).not.toEqual(last);
  await close();
});

test('another pulley: at once in the figures and the address, its bands after; back, and as it is', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, `/trials/${trial}/match`);
  await page.getByText('Tints: 95 of 100 cases').waitFor({ timeout: 30_000 });
  const [before, sentence] = [await numbers(page), await page.locator('h1').textContent()];
  const tints = () => page.locator('.bands').first().locator('path').count();
  expect(await tints()).toBe(2);
  await page.getByRole('button', { name: 'Blower pulley: less' }).click();
  await page.getByRole('button', { name: 'Blower pulley: less' }).click();
  expect(await numbers(page)).not.toBe(before);
  // What nothing was changed of keeps its band while that of the rest is worked out.
  expect(await tints()).toBeGreaterThanOrEqual(2);
  await expect.poll(() => page.locator('h1').textContent()).not.toBe(sentence);
  await page.getByText('Tints: 95 of 100 cases').waitFor({ timeout: 30_000 });
  expect(await tints()).toBe(3);
  // 84 mm are 3.307 in; two steps of 0.05 in less.
  expect(tried(page)).toBe('3.207 in');
  const [level] = await marks(page);
  await page.reload();
  await expect.poll(() => blowerPulley(page).inputValue()).toBe('3.207 in');
  expect((await marks(page))[0]).toBe(level);
  // All steps of one thing are one place in the browser's history.
  await page.getByRole('radio', { name: 'None' }).check();
  await expect.poll(() => new URL(page.url()).searchParams.get('cooler')).toBe('none');
  await page.goBack();
  await expect.poll(() => new URL(page.url()).searchParams.get('cooler')).toBeNull();
  expect(tried(page)).toBe('3.207 in');
  await page.getByRole('button', { name: 'As it is' }).click();
  await expect.poll(() => tried(page)).toBeNull();
  await expect.poll(() => page.locator('h1').textContent()).toBe(sentence);
  await close();
});

test('a rule that speaks of what is only tried cannot be silenced', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, `/trials/${trial}/match?blowerPulleyDiameter=60%20mm`);
  const findings = page.getByRole('region', { name: 'Findings' });
  await findings
    .getByText(/^B′, 2\.36\sin blower pulley/)
    .first()
    .waitFor();
  expect(await findings.getByRole('button', { name: /^Silence .*B′/ }).count()).toBe(0);
  // What can hurt somebody stands at the top too.
  await page
    .getByRole('status', { name: 'Alarms' })
    .getByText(/reaches 68,310\srpm/)
    .waitFor();
  await open(page, `/trials/${trial}`);
  await page.getByRole('link', { name: /^The match: / }).click();
  await map(page).getByRole('img').waitFor();
  await close();
});

test('by keyboard alone: a pulley typed in millimetres, one that cannot be, taken back', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, `/trials/${trial}/match`);
  await tabTo(page, blowerPulley(page));
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('80 mm');
  await expect.poll(() => tried(page)).toBe('80 mm');
  // The bands of what is tried come after its figures.
  await page.getByText('Tints: 95 of 100 cases').waitFor({ timeout: 30_000 });
  await expect.poll(() => numbers(page)).toMatch(/Drive, B′, 95\s%/);
  const at80 = await numbers(page);
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('0 mm');
  await page.getByText(/Blower pulley: 0 mm cannot be/).waitFor();
  // What cannot be changes nothing.
  expect(await numbers(page)).toBe(at80);
  await page.keyboard.press('Shift+Tab');
  await page.keyboard.press('Shift+Tab');
  await tabTo(page, page.getByRole('button', { name: 'As it is' }));
  await page.keyboard.press('Enter');
  await expect.poll(() => tried(page)).toBeNull();
  await close();
});

test('what is foretold of a pulley nobody pulled is kept, unaltered, beside what is still to come', async () => {
  const combination = await idOf('combinations', /^Supercharged, base cam$/);
  const { sheetText } = (await ask(`/combinations/${combination}`)) as CombinationPage;
  const other = await send('/combinations', {
    sheetText: sheetText
      .replace('Supercharged, base cam', 'Supercharged, base cam, 82 mm pulley')
      .replace(/(blowerPulleyDiameter:\s+value: )84/, (_, before: string) => `${before}82`),
    madeFromId: combination,
  });
  const { id } = await send('/trials', {
    question: 'What would a pulley between the two add?',
    combinations: [
      { combinationId: combination, shortName: '84 mm' },
      { combinationId: other.id, shortName: '82 mm' },
    ],
  });
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, `/trials/${id}/match`);
  await page.getByRole('button', { name: 'Keep this prediction: B, 82 mm' }).click();
  const predictions = page.getByRole('region', { name: 'Predictions' });
  await predictions
    .getByText(/^B: .*psi/)
    .first()
    .waitFor({ timeout: 30_000 });
  const lines = predictions.getByText(/^B: /);
  // Of the power and of the boost; pressed again it is still the same one.
  expect(await lines.count()).toBe(2);
  await predictions.getByRole('button', { name: 'Kept: B, 82 mm' }).click();
  expect(await lines.count()).toBe(2);
  await open(page, `/trials/${id}`);
  await page
    .getByText(/^B: .*psi/)
    .first()
    .waitFor();
  await page.getByRole('link', { name: 'What the match foretells' }).click();
  await page.waitForURL(/\/match$/);
  await close();
});

test('an engine without a supercharger has no match, and the page says what to enter', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, `/combinations/${await idOf('combinations', /^Naturally aspirated, base cam$/)}`);
  expect(await page.getByRole('link', { name: /^Match/ }).count()).toBe(0);
  await open(page, `/combinations/${await idOf('combinations', /^Naturally aspirated, base cam$/)}/match`);
  await page.getByRole('heading', { level: 1, name: 'No match yet' }).waitFor();
  expect(
    await page.getByRole('region', { name: 'What it lacks' }).getByRole('listitem').count(),
  ).toBeGreaterThan(0);
  await page.getByRole('link', { name: 'Amend the sheet' }).waitFor();
  await close();
});

test('the server gone: what was worked out stays, and the page says that the bands do not come', async () => {
  const { page } = await watchedPage(browser, pullbook.address);
  await open(page, `/trials/${trial}/match`);
  await page.getByText('Tints: 95 of 100 cases').waitFor({ timeout: 30_000 });
  const before = await numbers(page);
  await page.route('**/api/match/bands', (route) => route.abort());
  await page.getByRole('button', { name: 'Blower pulley: less' }).click();
  expect(await numbers(page)).not.toBe(before);
  await page.getByRole('alert').filter({ hasText: 'Pullbook does not answer' }).waitFor({ timeout: 30_000 });
  await page.context().close();
});
