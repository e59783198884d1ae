import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type RunningPullbook, startPullbook } from './start.ts';
import { launch, open, watchedPage } from './watched-page.ts';

let pullbook: RunningPullbook;
let browser: Browser;
let paths: Record<string, string>;

beforeAll(async () => {
  [pullbook, browser] = await Promise.all([startPullbook('demo'), launch()]);
  const first = async (what: string) => {
    const rows = (await (await fetch(`${pullbook.address}/api/${what}`)).json()) as { id: string }[];
    return rows[0]!.id;
  };
  const [trial, pull, combination] = await Promise.all([
    first('trials'),
    first('pulls'),
    first('combinations'),
  ]);
  paths = {
    trials: '/',
    trial: `/trials/${trial}`,
    'start a trial': '/trials/new',
    'add pulls': '/add',
    pulls: '/pulls',
    pull: `/pulls/${pull}`,
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

describe('no barrier, light or dark', () => {
  test.each(PAGES)('%s', async (name) => {
    const watched = await watchedPage(browser, pullbook.address);
    await open(watched.page, paths[name]!);
    expect(await barriers(watched.page)).toEqual([]);
    await watched.close();
  });

  test.each([
    ['publish', 'p', 'Publish a still'],
    ['keys', '?', 'Keys'],
  ])('the dialog of a trial: %s', async (_, key, title) => {
    const watched = await watchedPage(browser, pullbook.address);
    await open(watched.page, paths.trial!);
    await watched.page.keyboard.press(key);
    await watched.page.getByRole('dialog', { name: title }).waitFor();
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
