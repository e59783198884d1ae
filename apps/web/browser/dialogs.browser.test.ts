import { readdirSync, readFileSync } from 'node:fs';
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  atDesk,
  barriers,
  beside,
  type LookedAt,
  lookAtDemo,
  sources,
  TELEPHONE,
  unfold,
} from './barriers.ts';

let look: LookedAt;
const at: LookedAt['at'] = (address, options) => look.at(address, options);

beforeAll(async () => {
  look = await lookAtDemo();
});
afterAll(() => look?.stop());

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
    file: 'pages/present/KeysCard.tsx',
    address: '/trials/{trial}/present',
    openIt: byKey('?'),
    title: 'Keys while presenting',
  },
  {
    file: 'pages/publications/LinkDialog.tsx',
    address: '/publications',
    openIt: byButton('It appeared …'),
    title: 'Where it appeared',
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
    file: 'pages/parts/PartDialog.tsx',
    address: '/shop/parts',
    openIt: byButton(/^Add to /),
    title: /^Add to: /,
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

test('no dialog is forgotten here', () => {
  const withDialog = readdirSync(sources, { recursive: true, encoding: 'utf8' }).filter(
    (file) =>
      file.endsWith('.tsx') &&
      file !== 'parts/Dialog.tsx' &&
      /<Dialog[\s>]/.test(readFileSync(sources + file, 'utf8')),
  );
  expect(DIALOGS.map(({ file }) => file).toSorted()).toEqual(withDialog.toSorted());
});

describe('fits a telephone; at a desk no barrier, light or dark', () => {
  test.concurrent.each(DIALOGS)('the dialog of $file', async ({ address, openIt, title, more, without }) => {
    const watched = await at(address, TELEPHONE);
    // Keys are pressed on a telephone by those who have a keyboard to it.
    await openIt(watched.page);
    const dialog = watched.page.getByRole('dialog', { name: title });
    await dialog.waitFor();
    expect(await beside(dialog)).toBe(0);
    const seen = await atDesk(watched.page, async () => {
      await more?.(dialog, watched.page);
      await unfold(dialog);
      // The page behind it has a test of its own.
      return barriers(watched.page, { without, within: '[role=dialog]' });
    });
    expect(seen).toEqual([]);
    await watched.close();
  });

  test('what another window changed meanwhile', async () => {
    const { page } = await at('/pulls/{curve}');
    await page.keyboard.press('e');
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel('Cell', { exact: true }).fill('late cell');
    await dialog.getByRole('textbox', { name: 'Reason' }).fill('it was another');
    await fetch(`${look.pullbook.address}/api/pulls/${look.ids.curve}`, {
      method: 'PATCH',
      headers: { 'content-type': 'application/json', origin: look.pullbook.address },
      body: JSON.stringify({ amendment: { cell: 'early cell' }, reason: 'written beside it' }),
    });
    await page.keyboard.press('Enter');
    await page.getByRole('alert', { name: 'Changed meanwhile' }).waitFor();
    expect(await barriers(page, { within: '[role=dialog]' })).toEqual([]);
    await page.context().close();
  });
});
