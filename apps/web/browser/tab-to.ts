import type { Locator, Page } from 'playwright-core';

/** Presses Tab until this element has the focus. */
export async function tabTo(page: Page, wanted: Locator): Promise<void> {
  await wanted.waitFor();
  for (let presses = 0; presses < 120; presses += 1) {
    await page.keyboard.press('Tab');
    if (await wanted.evaluate((element) => element === document.activeElement)) return;
  }
  throw new Error(`Tab never came to ${wanted}`);
}
