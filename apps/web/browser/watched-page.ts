import type { Browser, BrowserContextOptions, Page, Request, Response } from 'playwright-core';
import { expect } from 'vitest';

export interface WatchedPage {
  page: Page;
  /** Fails where the page complained, asked for something it did not get, or asked anybody but its own server. */
  close: () => Promise<void>;
}

/** Pages that are done, by what they were opened with. A warm one loads a screen in a third of the time of a new one. */
const done = new WeakMap<Browser, Map<string, Page[]>>();

/** A page whose complaints are counted; nothing of what was done in it before is left. */
export async function watchedPage(
  browser: Browser,
  address: string,
  options: BrowserContextOptions = {},
): Promise<WatchedPage> {
  const wanted = { baseURL: address, viewport: { width: 1440, height: 900 }, ...options };
  const ofThisKind = doneWith(browser, wanted);
  const page = ofThisKind.pop() ?? (await (await browser.newContext(wanted)).newPage());
  const { troubles, endWatch } = watch(page, address);
  return {
    page,
    close: async () => {
      endWatch();
      await wipe(page, address, wanted);
      expect(troubles).toEqual([]);
      ofThisKind.push(page);
    },
  };
}

function doneWith(browser: Browser, options: BrowserContextOptions): Page[] {
  const kinds = done.get(browser) ?? new Map<string, Page[]>();
  done.set(browser, kinds);
  const kind = JSON.stringify(options);
  const pages = kinds.get(kind) ?? [];
  kinds.set(kind, pages);
  return pages;
}

function watch(page: Page, address: string) {
  const troubles: string[] = [];
  const listeners = {
    console: (message: { type: () => string; text: () => string }) => {
      if (message.type() === 'error' || message.type() === 'warning') troubles.push(message.text());
    },
    pageerror: (error: Error) => void troubles.push(String(error)),
    request: (request: Request) => {
      if (!/^(data|blob):/.test(request.url()) && !request.url().startsWith(address)) {
        troubles.push(`asked another machine: ${request.url()}`);
      }
    },
    response: (response: Response) => {
      if (response.status() >= 400) troubles.push(`${response.status()} ${response.url()}`);
    },
  };
  page.on('console', listeners.console);
  page.on('pageerror', listeners.pageerror);
  page.on('request', listeners.request);
  page.on('response', listeners.response);
  const endWatch = () => {
    page.off('console', listeners.console);
    page.off('pageerror', listeners.pageerror);
    page.off('request', listeners.request);
    page.off('response', listeners.response);
  };
  return { troubles, endWatch };
}

/** As it was when it was new, but warm. */
async function wipe(
  page: Page,
  address: string,
  { viewport, colorScheme, reducedMotion }: BrowserContextOptions,
) {
  const others = page.context().pages();
  await Promise.all(others.map((other) => other !== page && other.close()));
  await page.unrouteAll({ behavior: 'ignoreErrors' });
  await page.goto('about:blank');
  const session = await page.context().newCDPSession(page);
  await session.send('Storage.clearDataForOrigin', { origin: address, storageTypes: 'local_storage' });
  await session.detach();
  await page.emulateMedia({
    colorScheme: colorScheme ?? 'light',
    reducedMotion: reducedMotion ?? 'no-preference',
  });
  await page.mouse.move(0, 0);
  if (viewport) await page.setViewportSize(viewport);
}

/** Opens a page by its path and waits until its heading stands. */
export async function open(page: Page, path: string): Promise<void> {
  await page.goto(path);
  await page.locator('main h1').waitFor();
}
