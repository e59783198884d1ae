import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { expect } from 'vitest';

export interface WatchedPage {
  page: Page;
  /** Fails where the page complained, asked for something it did not get, or asked anybody but its own server. */
  close: () => Promise<void>;
}

/** A page whose complaints are counted. */
export async function watchedPage(
  browser: Browser,
  address: string,
  options: BrowserContextOptions = {},
): Promise<WatchedPage> {
  const context = await browser.newContext({
    baseURL: address,
    viewport: { width: 1440, height: 900 },
    ...options,
  });
  const page = await context.newPage();
  const troubles: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') troubles.push(message.text());
  });
  page.on('pageerror', (error) => troubles.push(String(error)));
  page.on('request', (request) => {
    if (!/^(data|blob):/.test(request.url()) && !request.url().startsWith(address)) {
      troubles.push(`asked another machine: ${request.url()}`);
    }
  });
  page.on('response', (response) => {
    if (response.status() >= 400) troubles.push(`${response.status()} ${response.url()}`);
  });
  return {
    page,
    close: async () => {
      await context.close();
      expect(troubles).toEqual([]);
    },
  };
}

/** Opens a page by its path and waits until its heading stands. */
export async function open(page: Page, path: string): Promise<void> {
  await page.goto(path);
  await page.locator('main h1').waitFor();
}
