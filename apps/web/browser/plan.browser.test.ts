import { execFile } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { type PullSheet, pullSheetHtml } from '@pullbook/views';
import type { PlanReport } from '@pullbook/workshop';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { faults } from './barriers.ts';
import { launch } from './launch.ts';
import { type RunningPullbook, startPullbook } from './start.ts';
import { tabTo } from './tab-to.ts';
import { open, watchedPage } from './watched-page.ts';

const program = fileURLToPath(new URL('../../cli/bin/pullbook.mjs', import.meta.url));
const QUESTION = 'What does the longer cam add at the same pulley?';
let pullbook: RunningPullbook;
let browser: Browser;

/** The plan as the command line says it, of the trial nobody planned yet. */
let unplanned: PlanJson;

beforeAll(async () => {
  [pullbook, browser] = await Promise.all([startPullbook('demo'), launch()]);
  unplanned = await planJson();
});
afterAll(async () => {
  await browser?.close();
  await pullbook?.stop();
});

type PlanJson = Pick<
  PlanReport,
  'trialId' | 'gainPercent' | 'kept' | 'stopCriteria' | 'planningAid' | 'cautions'
>;

async function planJson() {
  const run = promisify(execFile);
  const all = [program, 'plan', '--trial', QUESTION, '--book', pullbook.book, '--json'];
  const { stdout } = await run(process.execPath, all);
  return JSON.parse(stdout) as PlanJson;
}

/** A page of a PDF is an object of type Page; the tree above them is of type Pages. */
const pagesOf = (pdf: Buffer): number =>
  pdf.toString('latin1').match(/\/Type\s*\/Page(?![a-z])/gi)?.length ?? 0;

test('by keyboard: N on the trial, another gain, kept; the evidence says what is still to make; forgotten', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, `/trials/${unplanned.trialId}`);
  await page.getByRole('heading', { level: 2, name: 'Plan' }).waitFor();
  await page.keyboard.press('n');
  await page.getByRole('heading', { level: 1, name: 'Plan the next pulls' }).waitFor();
  const gain = page.getByRole('textbox', { name: 'Gain' });
  await tabTo(page, gain);
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('5 %');
  await page.getByText(/show a gain of 5\.0\s%/).waitFor();
  await tabTo(page, page.getByRole('button', { name: 'Keep the plan' }));
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Keep it anew' }).waitFor();
  const { kept, gainPercent } = await planJson();
  expect(gainPercent).toBeCloseTo(5, 9);
  expect(kept!.left.length).toBeGreaterThan(0);
  await page.getByRole('link', { name: QUESTION }).click();
  const evidence = page.getByRole('region', { name: 'Evidence' });
  await evidence
    .getByText(/^planned: [AB], pull \d+ of \d+$/)
    .first()
    .waitFor();
  expect(await evidence.getByText(/^planned: /).count()).toBe(kept!.left.length);
  await page.getByRole('link', { name: /Plan the next pull/ }).click();
  await page.getByRole('button', { name: 'Forget the plan' }).click();
  await page.getByRole('button', { name: 'Keep the plan' }).waitFor();
  expect((await planJson()).kept).toBeNull();
  await close();
});

test('a line of the stop card is changed, kept with the plan, and on the sheet that the keyboard opens', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address);
  await open(page, `/trials/${unplanned.trialId}/plan`);
  const card = page.getByRole('region', { name: 'End the pull at once' });
  await card.getByText('Nobody in the cell during a pull.').waitFor();
  await card.getByRole('button', { name: 'Change the lines' }).click();
  await page.getByRole('textbox', { name: 'Limit' }).first().fill('9 psi for each 1,000 r/min');
  await page.getByRole('button', { name: 'Keep the lines' }).click();
  await card.getByText('9 psi for each 1,000 r/min').waitFor();
  await page.getByRole('button', { name: 'Forget the plan' }).waitFor();
  const sheetLink = page.getByRole('link', { name: 'Pull sheet, letter' });
  await tabTo(page, sheetLink);
  const [sheet] = await Promise.all([page.context().waitForEvent('page'), page.keyboard.press('Enter')]);
  await sheet.getByText('9 psi for each 1,000 r/min').waitFor();
  await sheet.close();
  await page.getByRole('button', { name: 'Forget the plan' }).click();
  await card.getByText('9 psi for each 1,000 r/min').waitFor({ state: 'detached' });
  await close();
});

/** The fullest sheet: the engine is taken apart three times and every limit and caution stands on it. */
function fullSheet(pulls: number, { stopCriteria, planningAid, cautions }: PlanJson): PullSheet {
  const stay = Math.ceil(pulls / 4);
  const place = {
    label: 'From pull to pull',
    value: 'oil within 10 °F, coolant within 5 °F of the first counted pull',
  };
  return {
    question:
      'What does the longer cam add at the same pulley, on methanol and with the larger cooler fitted?',
    combinations: 'A base cam against B 12° longer cam with the larger cooler',
    sentence: `${pulls} pulls show a gain of 2.0 % (8 hp) with 82 % odds.`,
    facts: [
      { label: 'Standard', value: 'SAE J1349' },
      { label: 'Window', value: '4,000 to 6,500 rpm' },
      { label: 'Look', value: 'after 6, 9 and 12 counted pulls' },
    ],
    notes: '',
    rows: Array.from({ length: pulls }, (_, index) => ({
      order: index + 1,
      key: Math.floor(index / stay) % 2 === 0 ? 'A' : 'B',
      name: '12° longer cam, larger cooler',
      fitting:
        index % stay === 0 ? { words: 'Take the engine apart, fit B 12° longer cam.', warmUps: 2 } : null,
      wait: '3 min',
    })),
    window: '4,000 to 6,500',
    rate: '300 rpm/s',
    withCharge: true,
    start: [
      place,
      { label: 'Oil at the start', value: '160 to 190 °F' },
      { label: 'Coolant', value: '160 to 185 °F' },
    ],
    stopCriteria: [
      ...stopCriteria,
      {
        ...stopCriteria[0]!,
        id: 'nitrous',
        label: 'Nitrous',
        limit: 'lean in the first 0.3 s after it is switched on',
      },
    ],
    planningAid,
    // Methanol, alcohol hoses, nitrous and backfire stand on it besides: as long as the longest that are there.
    cautions: [...cautions, ...Array.from({ length: 4 }, () => longest(cautions))],
    isInvented: true,
  };
}

const longest = (texts: readonly string[]): string =>
  texts.reduce((most, one) => (one.length > most.length ? one : most));

test.each(['a4', 'letter'] as const)(
  'the fullest pull sheet on %s: 12 pulls on one page, 24 on two',
  async (paper) => {
    const { page, close } = await watchedPage(browser, pullbook.address);
    for (const [pulls, pages] of [
      [12, 1],
      [24, 2],
    ] as const) {
      await page.setContent(pullSheetHtml(fullSheet(pulls, unplanned), paper));
      expect(await page.locator('td.no').count()).toBe(pulls);
      // The line that says how to print it is no part of the sheet.
      expect(await faults(page, { without: ['region'] })).toEqual([]);
      const pdf = await page.pdf({ preferCSSPageSize: true });
      expect({ pulls, pages: pagesOf(pdf) }).toEqual({ pulls, pages });
      // Letter is 612 x 792 points, A4 595 x 842.
      expect(pdf.toString('latin1')).toMatch(
        paper === 'letter' ? /MediaBox\s*\[0 0 612 792\]/ : /MediaBox\s*\[0 0 59[456][.\d]* 84[12]/,
      );
    }
    await close();
  },
);
