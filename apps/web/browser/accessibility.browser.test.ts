import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { launch } from './launch.ts';
import { type RunningPullbook, startPullbook } from './start.ts';
import { open, type WatchedPage, watchedPage } from './watched-page.ts';

let pullbook: RunningPullbook;
let browser: Browser;

/** Addresses to look at for every path of the router; names in braces are ids of things in the demo. */
const PAGES: Record<string, string[]> = {
  '/': ['/'],
  '/trials/new': ['/trials/new'],
  '/trials/$id': ['/trials/{trial}'],
  '/trials/$id/plan': ['/trials/{trial}/plan'],
  '/trials/$id/match': ['/trials/{trial}/match', '/trials/{trial}/match?cooler=other&moreAir=8%25'],
  '/add': ['/add', '/add?like=last'],
  '/pulls': ['/pulls', '/pulls?boosted=yes&find=pull'],
  '/pulls/$id': ['/pulls/{summary}', '/pulls/{curve}', '/pulls/{curve}?over=speed'],
  '/combinations': ['/combinations'],
  '/combinations/new': ['/combinations/new', '/combinations/new?from={combination}'],
  '/combinations/$id': ['/combinations/{combination}'],
  '/combinations/$id/amend': ['/combinations/{combination}/amend'],
  '/combinations/$id/match': ['/combinations/{boosted}/match', '/combinations/{aspirated}/match'],
  '/maps': ['/maps'],
  '/maps/$id': ['/maps/{map}'],
  '/history': ['/history'],
  '/shop': ['/shop'],
  '/rules': ['/rules'],
  '/shop/figures': ['/shop/figures'],
  'no such page': ['/nowhere'],
};
const ADDRESSES = Object.values(PAGES).flat();

const sources = fileURLToPath(new URL('../src/', import.meta.url));
const ids: Record<string, string> = {};

beforeAll(async () => {
  [pullbook, browser] = await Promise.all([startPullbook('demo'), launch()]);
  const first = async (what: string, isIt: (row: Record<string, string>) => boolean = () => true) => {
    const list = await (await fetch(`${pullbook.address}/api/${what}`)).json();
    return ((Array.isArray(list) ? list : list.rows) as Record<string, string>[]).find(isIt)!.id!;
  };
  ids.trial = await first('trials');
  ids.unpulled = await first('trials', ({ question }) => /without the supercharger/.test(question!));
  ids.summary = await first('pulls', ({ name }) => name === 'Best pull before the rebuild');
  ids.curve = await first('pulls', ({ name }) => name === 'Pull 9');
  ids.combination = await first('combinations');
  ids.boosted = await first('combinations', ({ name }) => name === 'Supercharged, base cam');
  ids.aspirated = await first('combinations', ({ name }) => name === 'Naturally aspirated, base cam');
  ids.map = await first('maps');
});
afterAll(async () => {
  await browser?.close();
  await pullbook?.stop();
});

async function at(address: string, options = {}): Promise<WatchedPage> {
  const watched = await watchedPage(browser, pullbook.address, options);
  await open(watched.page, withIds(address));
  return watched;
}

const withIds = (address: string) => address.replace(/{(\w+)}/g, (_, name: string) => ids[name]!);

const LEVELS = ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** Everything in the light theme; in the dark one only what colours can change. */
async function barriers(page: Page, without: string[] = []): Promise<string[]> {
  await page.emulateMedia({ colorScheme: 'light' });
  const light = await new AxeBuilder({ page }).withTags(LEVELS).disableRules(without).analyze();
  await page.emulateMedia({ colorScheme: 'dark' });
  await page.locator('html[data-theme=dark]').waitFor();
  // A colour on its way to another has no contrast to be judged by.
  await page.evaluate(() => Promise.allSettled(document.getAnimations().map(({ finished }) => finished)));
  const dark = await new AxeBuilder({ page }).withRules(['color-contrast']).analyze();
  const told = (theme: string, found: typeof light) =>
    found.violations.flatMap((one) =>
      one.nodes.map((node) => `${theme}, ${one.id}: ${node.html.slice(0, 160)}`),
    );
  return [...told('light', light), ...told('dark', dark)];
}

/** Opens what is folded: it is read too. */
const unfold = (within: Locator): Promise<void> =>
  within.locator('details').evaluateAll((all) => {
    for (const one of all) (one as HTMLDetailsElement).open = true;
  });

/** How far it reaches beyond its own width: then it scrolls sideways. */
const beside = (wanted: Locator): Promise<number> =>
  wanted.evaluate(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth);

/** What can be touched and is lower than 44 px. A box or a dot to choose is as high as its label. */
function smallTargets(page: Page): Promise<string[]> {
  return page
    .locator(
      'header :is(a, button):visible, main :is(a, button, select, summary, label:has(input), input:not([type=radio], [type=checkbox])):visible',
    )
    .evaluateAll((all) =>
      all
        .filter((one) => Math.round(one.getBoundingClientRect().height) < 44)
        .map((one) => `${Math.round(one.getBoundingClientRect().height)} ${one.outerHTML.slice(0, 120)}`),
    );
}

/** Opens a dialog by the key that does it. */
const byKey = (key: string) => (page: Page) => page.keyboard.press(key);

/** Opens a dialog by its button, the first of that name. */
const byButton = (name: string | RegExp) => (page: Page) =>
  page.getByRole('button', { name }).first().click();

interface OpenDialog {
  /** File under `src` that draws it. */
  file: string;
  address: string;
  openIt: (page: Page) => Promise<void>;
  title: string | RegExp;
  /** Rules of axe that do not hold in it, with the reason. */
  without?: string[];
  /** What is to be done in it to see all of it. */
  more?: (dialog: Locator, page: Page) => Promise<void>;
}

const DIALOGS: OpenDialog[] = [
  { file: 'frame/KeysOverlay.tsx', address: '/', openIt: byKey('?'), title: 'Keys' },
  {
    file: 'frame/ViewMenu.tsx',
    address: '/',
    openIt: byButton('View'),
    title: 'View',
    // The component library puts its unseen button to close a popover beside the dialog, not in it.
    without: ['region'],
  },
  {
    file: 'pages/trial/PublishDialog.tsx',
    address: '/trials/{trial}',
    openIt: byKey('p'),
    title: 'Publish a still',
  },
  {
    file: 'pages/trial/ChangeTrialDialog.tsx',
    address: '/trials/{trial}',
    openIt: byKey('e'),
    title: 'Change the trial',
  },
  {
    file: 'pages/trial/RoleDialog.tsx',
    address: '/trials/{trial}',
    openIt: byButton(/^Reject Pull/),
    title: /^Pull \d$/,
  },
  {
    file: 'pages/trial/ChoosePulls.tsx',
    address: '/trials/{trial}',
    openIt: byButton('Take more pulls'),
    title: 'Take more pulls',
  },
  {
    file: 'pages/trial/OwnRemark.tsx',
    address: '/trials/{trial}',
    openIt: byButton(/the remark$/),
    title: 'Your remark',
  },
  {
    file: 'pages/trial/PredictDialog.tsx',
    address: '/trials/{unpulled}',
    openIt: byButton('Predict before the pull'),
    title: 'Predict before the pull',
  },
  {
    file: 'pages/plan/StopDialog.tsx',
    address: '/trials/{trial}/plan',
    openIt: byButton('Change the lines'),
    title: 'When to end a pull at once',
  },
  {
    file: 'parts/SilenceDialog.tsx',
    address: '/pulls/{curve}',
    openIt: byButton('Silence V29'),
    title: 'Silence V29',
  },
  {
    file: 'pages/rules/RulesPage.tsx',
    address: '/rules',
    openIt: async (page) => {
      await page.locator('summary').filter({ hasText: 'V04' }).click();
      await byButton(/^Set: /)(page);
    },
    title: /^Factor wanders/,
  },
  {
    file: 'parts/AudienceDialog.tsx',
    address: '/trials/{trial}',
    openIt: byButton(/who may see it/),
    title: 'Who may see it',
  },
  {
    file: 'pages/pull/AmendPullDialog.tsx',
    address: '/pulls/{curve}',
    openIt: byKey('e'),
    title: 'Amend Pull 9',
  },
  {
    file: 'pages/pull/TreatmentDialog.tsx',
    address: '/pulls/{curve}',
    openIt: byButton('Change how it is read'),
    title: /is read$/,
    more: (dialog) => dialog.getByRole('radio', { name: /by hand/ }).check(),
  },
  {
    file: 'pages/add-pulls/SummaryDialog.tsx',
    address: '/add',
    openIt: byButton(/^Only peaks are known/),
    title: 'A pull without a file',
  },
  {
    file: 'pages/combination/NewCombinationDialog.tsx',
    address: '/add',
    openIt: async (page) => {
      const rows = Array.from({ length: 12 }, (_, row) => `${2000 + 250 * row},${300 + row}`);
      const buffer = Buffer.from(`rpm,torque (N·m)\n${rows.join('\n')}\n`);
      await page.getByLabel('Logged files').setInputFiles({ name: 'a.csv', mimeType: 'text/csv', buffer });
      await byButton(/^New combination from a sheet/)(page);
    },
    title: 'A new combination',
  },
  {
    file: 'pages/combinations/EngineDialog.tsx',
    address: '/combinations',
    openIt: byButton(/^Change /),
    title: /^Change /,
  },
  {
    file: 'pages/maps/ChangeMapDialog.tsx',
    address: '/maps/{map}',
    openIt: byButton('Name and notes'),
    title: 'Name and notes',
  },
  {
    file: 'pages/shop/CellDialog.tsx',
    address: '/shop',
    openIt: byButton('Change cell 1'),
    title: 'Change cell 1',
  },
  {
    file: 'pages/shop/InstrumentDialog.tsx',
    address: '/shop',
    openIt: byButton(/^Add an instrument/),
    title: /^An instrument of/,
  },
  {
    file: 'pages/shop/CalibrationDialog.tsx',
    address: '/shop',
    openIt: byButton(/^Calibrated …/),
    title: /calibrated$/,
  },
  {
    file: 'pages/shop/TakeOutDialog.tsx',
    address: '/shop',
    openIt: byButton(/^Take out …/),
    title: /^Take .* out of/,
  },
];

test('no page and no dialog is forgotten here', () => {
  const router = readFileSync(`${sources}router.tsx`, 'utf8');
  const paths = [...router.matchAll(/^ {2}path: '([^']+)'/gm)].map(([, path]) => path!);
  expect(paths.length).toBeGreaterThan(10);
  expect(Object.keys(PAGES).toSorted()).toEqual([...paths, 'no such page'].toSorted());
  const withDialog = readdirSync(sources, { recursive: true, encoding: 'utf8' }).filter(
    (file) =>
      file.endsWith('.tsx') &&
      file !== 'parts/Dialog.tsx' &&
      /<Dialog[\s>]/.test(readFileSync(sources + file, 'utf8')),
  );
  expect(DIALOGS.map(({ file }) => file).toSorted()).toEqual(withDialog.toSorted());
});

describe('no barrier, light or dark', () => {
  test.concurrent.each(ADDRESSES)('%s', async (address) => {
    const watched = await at(address);
    await watched.page.waitForLoadState('networkidle');
    await unfold(watched.page.locator('main'));
    expect(await barriers(watched.page)).toEqual([]);
    await watched.close();
  });

  test.concurrent.each(DIALOGS)('the dialog of $file', async ({ address, openIt, title, more, without }) => {
    const watched = await at(address);
    await openIt(watched.page);
    const dialog = watched.page.getByRole('dialog', { name: title });
    await dialog.waitFor();
    await more?.(dialog, watched.page);
    await unfold(dialog);
    expect(await barriers(watched.page, without)).toEqual([]);
    await watched.close();
  });

  test('what another window changed meanwhile', async () => {
    const { page } = await at('/pulls/{curve}');
    await page.keyboard.press('e');
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel('Cell', { exact: true }).fill('late cell');
    await dialog.getByRole('textbox', { name: 'Reason' }).fill('it was another');
    await fetch(`${pullbook.address}/api/pulls/${ids.curve}`, {
      method: 'PATCH',
      headers: { 'content-type': 'application/json', origin: pullbook.address },
      body: JSON.stringify({ amendment: { cell: 'early cell' }, reason: 'written beside it' }),
    });
    await page.keyboard.press('Enter');
    await page.getByRole('alert', { name: 'Changed meanwhile' }).waitFor();
    expect(await barriers(page)).toEqual([]);
    await page.context().close();
  });

  test('what was done last, with its undo', async () => {
    const watched = await at('/shop');
    await watched.page.getByRole('radio', { name: /^Comma/ }).check();
    await watched.page.getByRole('status', { name: 'Last act' }).getByRole('button').first().waitFor();
    expect(await barriers(watched.page)).toEqual([]);
    await watched.close();
  });
});

const TELEPHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

describe('a telephone', () => {
  test.concurrent.each(ADDRESSES)(
    '%s: nothing beside the screen, and what is touched is 44 px high',
    async (address) => {
      const watched = await at(address, TELEPHONE);
      await watched.page.waitForLoadState('networkidle');
      await unfold(watched.page.locator('main'));
      expect(await beside(watched.page.locator('html'))).toBe(0);
      expect(await smallTargets(watched.page)).toEqual([]);
      await watched.close();
    },
  );

  test.concurrent.each(DIALOGS)('the dialog of $file fits', async ({ file, address, openIt, title }) => {
    const watched = await at(address, TELEPHONE);
    // Keys are pressed on a telephone by those who have a keyboard to it.
    await openIt(watched.page);
    const dialog = watched.page.getByRole('dialog', { name: title });
    await dialog.waitFor();
    expect(await beside(dialog), file).toBe(0);
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
