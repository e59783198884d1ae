import { fileURLToPath } from 'node:url';
import type { MatchBundle } from '@pullbook/views/match';
import { build } from 'esbuild';
import { launch } from '../../apps/web/browser/launch.ts';

export interface TimesInPage {
  /** ms a match at sixty engine speeds */
  matchMs: number;
  /** ms a page with something tried */
  pageMs: number;
}

/** The same work as `hundredMatches` and `pageTried`, in the browser: medians. */
export async function matchInPage(bundle: MatchBundle): Promise<TimesInPage> {
  const { outputFiles } = await build({
    entryPoints: [fileURLToPath(new URL('./match-in-page-script.ts', import.meta.url))],
    bundle: true,
    format: 'iife',
    platform: 'browser',
    minify: true,
    write: false,
  });
  const browser = await launch();
  const page = await browser.newPage();
  await page.addScriptTag({ content: outputFiles[0]!.text });
  const times = await page.evaluate((sent) => globalThis.timesInPage(sent), JSON.stringify(bundle));
  await browser.close();
  return times;
}
