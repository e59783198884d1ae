import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  atDesk,
  barriers,
  beside,
  type LookedAt,
  lookAtDemo,
  smallTargets,
  sources,
  TELEPHONE,
  unfold,
} from './barriers.ts';

/** Addresses to look at for every path of the router; names in braces are ids of things in the demo. */
const PAGES: Record<string, string[]> = {
  '/': ['/'],
  '/trials/new': ['/trials/new'],
  '/trials/$id': ['/trials/{trial}'],
  '/trials/$id/plan': ['/trials/{trial}/plan'],
  '/trials/$id/match': ['/trials/{trial}/match', '/trials/{trial}/match?cooler=other&moreAir=8%25'],
  '/trials/$id/present': ['/trials/{trial}/present'],
  '/trials/$id/publish': ['/trials/{trial}/publish'],
  '/publications': ['/publications'],
  '/open': ['/open'],
  '/add': ['/add', '/add?like=last'],
  '/pulls': ['/pulls', '/pulls?boosted=yes&find=pull'],
  '/pulls/$id': ['/pulls/{summary}', '/pulls/{curve}', '/pulls/{curve}?over=speed'],
  '/combinations': ['/combinations'],
  '/combinations/new': ['/combinations/new', '/combinations/new?from={combination}'],
  '/combinations/$id': ['/combinations/{combination}'],
  '/combinations/$id/amend': ['/combinations/{combination}/amend'],
  '/combinations/$id/match': ['/combinations/{boosted}/match', '/combinations/{aspirated}/match'],
  '/combinations/$id/reach': [
    '/combinations/{boosted}/reach',
    '/combinations/{boosted}/reach?what=average%20power&without=fuel',
    '/combinations/{boosted}/reach?power=520%20hp&without=fuel',
  ],
  '/reach': ['/reach'],
  '/reach/$id': ['/reach/{enquiry}'],
  '/maps': ['/maps'],
  '/maps/$id': ['/maps/{map}'],
  '/history': ['/history'],
  '/shop': ['/shop'],
  '/rules': ['/rules'],
  '/shop/figures': ['/shop/figures'],
  '/shop/parts': ['/shop/parts'],
  'no such page': ['/nowhere'],
};
const ADDRESSES = Object.values(PAGES).flat();

let look: LookedAt;
const at: LookedAt['at'] = (address, options) => look.at(address, options);

beforeAll(async () => {
  look = await lookAtDemo();
});
afterAll(() => look?.stop());

test('no page is forgotten here', () => {
  const router = readFileSync(`${sources}router.tsx`, 'utf8');
  const paths = [...router.matchAll(/^ {2}path: '([^']+)'/gm)].map(([, path]) => path!);
  expect(paths.length).toBeGreaterThan(10);
  expect(Object.keys(PAGES).toSorted()).toEqual([...paths, 'no such page'].toSorted());
});

describe('on a telephone nothing beside the screen, and what is touched is 44 px high; at a desk no barrier, light or dark', () => {
  test.concurrent.each(ADDRESSES)('%s', async (address) => {
    const watched = await at(address, TELEPHONE);
    await watched.page.waitForLoadState('networkidle');
    // A search goes on in the page itself.
    await watched.page.locator('main progress').waitFor({ state: 'detached' });
    await unfold(watched.page.locator('main'));
    expect(await watched.page.evaluate(() => [innerWidth, matchMedia('(pointer: coarse)').matches])).toEqual([
      390,
      true,
    ]);
    expect(await beside(watched.page.locator('html'))).toBe(0);
    expect(await smallTargets(watched.page)).toEqual([]);
    expect(await atDesk(watched.page, () => barriers(watched.page))).toEqual([]);
    await watched.close();
  });
});

describe('besides', () => {
  test('no barrier in what was done last, with its undo', async () => {
    const watched = await at('/shop');
    await watched.page.getByRole('radio', { name: /^Comma/ }).check();
    await watched.page.getByRole('status', { name: 'Last act' }).getByRole('button').first().waitFor();
    expect(await barriers(watched.page)).toEqual([]);
    await watched.close();
  });

  test('the bar of places collapses and opens', async () => {
    const watched = await at('/', { viewport: { width: 390, height: 844 } });
    const pulls = watched.page.getByRole('navigation').getByRole('link', { name: 'Pulls' });
    expect(await pulls.isVisible()).toBe(false);
    await watched.page.getByRole('button', { name: 'Menu' }).click();
    await pulls.click();
    await watched.page.getByRole('heading', { level: 1, name: 'Pulls' }).waitFor();
    expect(await pulls.isVisible()).toBe(false);
    await watched.close();
  });
});
