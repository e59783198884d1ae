import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { launch } from './launch.ts';
import { type RunningPullbook, startPullbook } from './start.ts';
import { open, watchedPage } from './watched-page.ts';

let pullbook: RunningPullbook;
let browser: Browser;
let paths: Record<string, string>;

beforeAll(async () => {
  [pullbook, browser] = await Promise.all([startPullbook('demo'), launch()]);
  const first = async (what: string, name?: string) => {
    const rows = (await (await fetch(`${pullbook.address}/api/${what}`)).json()) as Record<string, string>[];
    return rows.find((row) => name === undefined || row.name === name)!.id;
  };
  const [trial, pull, curve, combination] = await Promise.all([
    first('trials'),
    first('pulls'),
    first('pulls', 'Pull 9'),
    first('combinations'),
  ]);
  paths = {
    trials: '/',
    trial: `/trials/${trial}`,
    'start a trial': '/trials/new',
    'add pulls': '/add',
    pulls: '/pulls',
    pull: `/pulls/${pull}`,
    curve: `/pulls/${curve}`,
    combinations: '/combinations',
    combination: `/combinations/${combination}`,
    'new combination': '/combinations/new',
    amendment: `/combinations/${combination}/amend`,
    'no such page': '/nowhere',
  };
});
afterAll(async () => {
  await browser?.close();
  await pullbook?.stop();
});

const PAGES = [
  'trials',
  'trial',
  'start a trial',
  'add pulls',
  'pulls',
  'pull',
  'curve',
  'combinations',
  'combination',
  'new combination',
  'amendment',
  'no such page',
];

const LEVELS = ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** Everything in the light theme; in the dark one only what colours can change. */
async function barriers(page: Page): Promise<string[]> {
  await page.emulateMedia({ colorScheme: 'light' });
  const light = await new AxeBuilder({ page }).withTags(LEVELS).analyze();
  await page.emulateMedia({ colorScheme: 'dark' });
  await page.locator('html[data-theme=dark]').waitFor();
  const dark = await new AxeBuilder({ page }).withRules(['color-contrast']).analyze();
  const told = (theme: string, found: typeof light) =>
    found.violations.flatMap((one) =>
      one.nodes.map((node) => `${theme}, ${one.id}: ${node.html.slice(0, 160)}`),
    );
  return [...told('light', light), ...told('dark', dark)];
}

/** Opens what is folded: it is read too. */
async function unfold(dialog: Locator): Promise<void> {
  for (const summary of await dialog.locator('details:not([open]) > summary').all()) await summary.click();
}

describe('no barrier, light or dark', () => {
  test.each(PAGES)('%s', async (name) => {
    const watched = await watchedPage(browser, pullbook.address);
    await open(watched.page, paths[name]!);
    expect(await barriers(watched.page)).toEqual([]);
    await watched.close();
  });

  test.each([
    ['publish', 'trial', 'p', 'Publish a still'],
    ['keys', 'trial', '?', 'Keys'],
    ['change the trial', 'trial', 'e', 'Change the trial'],
    ['amend a pull', 'pull', 'e', /^Amend /],
  ])('the dialog behind a key: %s', async (_, name, key, title) => {
    const watched = await watchedPage(browser, pullbook.address);
    await open(watched.page, paths[name]!);
    await watched.page.keyboard.press(key);
    const dialog = watched.page.getByRole('dialog', { name: title });
    await dialog.waitFor();
    await unfold(dialog);
    expect(await barriers(watched.page)).toEqual([]);
    await watched.close();
  });

  test('the dialog of how a pull is read', async () => {
    const watched = await watchedPage(browser, pullbook.address);
    await open(watched.page, paths.curve!);
    await watched.page.getByRole('button', { name: 'Change how it is read' }).click();
    const dialog = watched.page.getByRole('dialog', { name: /is read$/ });
    await dialog.getByRole('radio', { name: /by hand/ }).check();
    await unfold(dialog);
    expect(await barriers(watched.page)).toEqual([]);
    await watched.close();
  });
});

describe('a telephone', () => {
  test.each(PAGES)('%s does not scroll sideways at 390 px', async (name) => {
    const watched = await watchedPage(browser, pullbook.address, {
      viewport: { width: 390, height: 844 },
      hasTouch: true,
      isMobile: true,
    });
    await open(watched.page, paths[name]!);
    const sideways = await watched.page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(sideways).toBe(0);
    await watched.close();
  });

  test('what is touched is at least 44 px high', async () => {
    const watched = await watchedPage(browser, pullbook.address, {
      viewport: { width: 390, height: 844 },
      hasTouch: true,
      isMobile: true,
    });
    for (const name of ['trials', 'trial', 'start a trial', 'add pulls']) {
      await open(watched.page, paths[name]!);
      const small = await watched.page.evaluate(() =>
        [
          ...document.querySelectorAll(
            'main button, main select, main input:not([type=radio], [type=checkbox], [hidden]), header button',
          ),
        ]
          .filter((one) => one.getBoundingClientRect().height > 0 && one.getBoundingClientRect().height < 44)
          .map((one) => one.outerHTML.slice(0, 120)),
      );
      expect(small).toEqual([]);
    }
    await watched.close();
  });

  test('the bar of places collapses and opens', async () => {
    const watched = await watchedPage(browser, pullbook.address, { viewport: { width: 390, height: 844 } });
    await open(watched.page, '/');
    const pulls = watched.page.getByRole('navigation').getByRole('link', { name: 'Pulls' });
    expect(await pulls.isVisible()).toBe(false);
    await watched.page.getByRole('button', { name: 'Menu' }).click();
    await pulls.click();
    await watched.page.getByRole('heading', { level: 1, name: 'Pulls' }).waitFor();
    expect(await pulls.isVisible()).toBe(false);
    await watched.close();
  });
});
