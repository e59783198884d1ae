import type { Locator, Page } from 'playwright-core';

/** Presses Tab until this element has the focus. */
export async function tabTo(page: Page, wanted: Locator): Promise<void> {
  await wanted.waitFor();
  // Held, not looked for again at each press: the names of all that a long page holds take longer than the press.
  let held = await wanted.elementHandle();
  for (let presses = 0; presses < 120; presses += 1) {
    await page.keyboard.press('Tab');
    const [hasFocus, isGone] = await held!.evaluate((element) => [
      element === document.activeElement,
      !element.isConnected,
    ]);
    if (hasFocus) return;
    if (isGone) held = await wanted.elementHandle();
  }
  throw new Error(`Tab never came to ${wanted}`);
}
