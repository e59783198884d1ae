import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Locator, Page } from 'playwright-core';
import { launch } from './launch.ts';
import { type RunningPullbook, startPullbook } from './start.ts';
import { open, type WatchedPage, watchedPage } from './watched-page.ts';

/** Where the screens' sources lie, to see that none is forgotten. */
export const sources = fileURLToPath(new URL('../src/', import.meta.url));

export const TELEPHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

/** Looks at the page of a telephone as it stands at a desk, without another load: as wide, and pointed at by a mouse. */
export async function atDesk<Seen>(page: Page, look: () => Promise<Seen>): Promise<Seen> {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setTouchEmulationEnabled', { enabled: false });
  await page.setViewportSize({ width: 1440, height: 900 });
  await page.waitForFunction(() => innerWidth === 1440 && !matchMedia('(pointer: coarse)').matches);
  const seen = await look();
  await session.send('Emulation.setTouchEmulationEnabled', { enabled: true });
  await session.detach();
  return seen;
}

/** The demo in a browser, and ids of things in it. */
export interface LookedAt {
  pullbook: RunningPullbook;
  browser: Browser;
  ids: Record<string, string>;
  /** Opens an address; names in braces are ids of things in the demo. */
  at: (address: string, options?: object) => Promise<WatchedPage>;
  stop: () => Promise<void>;
}

export async function lookAtDemo(): Promise<LookedAt> {
  const [pullbook, browser] = await Promise.all([startPullbook('demo'), launch()]);
  const first = async (what: string, isIt: (row: Record<string, string>) => boolean = () => true) => {
    const list = await (await fetch(`${pullbook.address}/api/${what}`)).json();
    return ((Array.isArray(list) ? list : list.rows) as Record<string, string>[]).find(isIt)!.id!;
  };
  const ids: Record<string, string> = {
    trial: await first('trials'),
    unpulled: await first('trials', ({ question }) => /without the supercharger/.test(question!)),
    summary: await first('pulls', ({ name }) => name === 'Best pull before the rebuild'),
    curve: await first('pulls', ({ name }) => name === 'Pull 9'),
    combination: await first('combinations'),
    boosted: await first('combinations', ({ name }) => name === 'Supercharged, base cam'),
    aspirated: await first('combinations', ({ name }) => name === 'Naturally aspirated, base cam'),
    map: await first('maps'),
  };
  // Noted as a page notes what it made itself, so that there is a publication to look at.
  const noted = await fetch(`${pullbook.address}/api/trials/${ids.trial}/publications`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin: pullbook.address },
    body: JSON.stringify({ files: [{ name: 'still.png', kind: 'still', bytes: 1, sha256: '0'.repeat(64) }] }),
  });
  if (!noted.ok) throw new Error(`The publication was not noted: ${await noted.text()}`);
  ids.enquiry = await keptEnquiry(pullbook.address, ids.boosted!);
  return {
    pullbook,
    browser,
    ids,
    at: async (address, options = {}) => {
      const watched = await watchedPage(browser, pullbook.address, options);
      await open(
        watched.page,
        address.replace(/{(\w+)}/g, (_, name: string) => ids[name]!),
      );
      return watched;
    },
    stop: async () => {
      await browser.close();
      await pullbook.stop();
    },
  };
}

/** A power is asked and the answer kept, as a page does, so that there is one to look at. */
async function keptEnquiry(address: string, combinationId: string): Promise<string> {
  const asked = {
    power: '520 hp',
    what: 'peak power',
    at: null,
    window: null,
    boostCap: null,
    without: ['fuel'],
    correction: 'sae-j1349',
  };
  const kept = await fetch(`${address}/api/enquiries`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin: address },
    body: JSON.stringify({ combinationId, asked }),
  });
  if (!kept.ok) throw new Error(`The answer was not kept: ${await kept.text()}`);
  return ((await kept.json()) as { id: string }).id;
}

const LEVELS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** Only what is at fault is gathered, and the page is not copied into a second one to be judged: both cost most of the time. */
const judge = (page: Page, within: string): AxeBuilder =>
  new AxeBuilder({ page })
    .setLegacyMode()
    .options({ resultTypes: ['violations'] })
    .include(within);

interface Judged {
  /** Rules of axe that do not hold there. */
  without?: string[] | undefined;
  within?: string;
}

/** Of the page as it stands, in the theme that it is in. */
export async function faults(page: Page, { without = [], within = 'html' }: Judged = {}): Promise<string[]> {
  return told(await judge(page, within).withTags(LEVELS).disableRules(without).analyze());
}

/** Everything in the light theme; in the dark one only what colours can change. */
export async function barriers(page: Page, judged: Judged = {}): Promise<string[]> {
  await page.emulateMedia({ colorScheme: 'light' });
  await page.locator('html:not([data-theme=dark])').waitFor();
  await settled(page);
  const light = await faults(page, judged);
  await page.emulateMedia({ colorScheme: 'dark' });
  await page.locator('html[data-theme=dark]').waitFor();
  await settled(page);
  const dark = told(
    await judge(page, judged.within ?? 'html')
      .withRules(['color-contrast'])
      .analyze(),
  );
  return [...light.map((one) => `light, ${one}`), ...dark.map((one) => `dark, ${one}`)];
}

/** A colour on its way to another has no contrast to be judged by. */
const settled = (page: Page) =>
  page.evaluate(() => Promise.allSettled(document.getAnimations().map(({ finished }) => finished)));

const told = ({ violations }: Awaited<ReturnType<AxeBuilder['analyze']>>): string[] =>
  violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`));

/** Opens what is folded: it is read too. */
export const unfold = (within: Locator): Promise<void> =>
  within.locator('details').evaluateAll((all) => {
    for (const one of all) (one as HTMLDetailsElement).open = true;
  });

/** How far it reaches beyond its own width: then it scrolls sideways. */
export const beside = (wanted: Locator): Promise<number> =>
  wanted.evaluate(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth);

/** What can be touched and is lower than 44 px. A box or a dot to choose is as high as its label. */
export function smallTargets(page: Page): Promise<string[]> {
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
