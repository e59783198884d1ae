/** Runs in the browser: times of the match on a page, for `match-in-page.ts`. */
import { solveMatch } from '@pullbook/core/airpath';
import { revivedBundle } from '@pullbook/views/match';
import { matchAtSixtySpeeds } from './match-at-sixty-speeds.ts';
import type { TimesInPage } from './match-in-page.ts';
import { pageTried } from './page-tried.ts';

declare global {
  var timesInPage: (bundle: string) => TimesInPage;
}

/** Median of so many timings after one that is not counted, ms each of `times` runs. */
function timed(runs: number, times: number, work: () => void): number {
  const taken = Array.from({ length: runs + 1 }, () => {
    const start = performance.now();
    for (let one = 0; one < times; one++) work();
    return (performance.now() - start) / times;
  });
  return taken.slice(1).toSorted((a, b) => a - b)[Math.floor(runs / 2)]!;
}

globalThis.timesInPage = (bundle) => {
  const { input } = matchAtSixtySpeeds();
  return {
    matchMs: timed(15, 100, () => solveMatch(input)),
    pageMs: timed(15, 10, pageTried(revivedBundle(JSON.parse(bundle)))),
  };
};
