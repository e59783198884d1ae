import type { PullView } from '@pullbook/core/pull';
import { countedPulls, type TrialInView } from './trial-in-view.ts';

/** What a person may set about the reading of a pull, by the remark that says it is in force. */
const WORDS: Record<string, string> = {
  'window-set': 'window set by hand',
  'bin-width-set': 'bins set by hand',
  'bin-width-of-shop': 'bins as the shop has them',
  'lag-set': 'lags taken out',
  'inertia-added': 'inertia torque added',
};

/** `window set by hand`, `lags taken out`: what was set about the reading of a pull and is in force. */
export function treatmentWords({ remarks }: PullView): string[] {
  const codes = new Set(remarks.map(({ code }) => code));
  return Object.entries(WORDS).flatMap(([code, words]) => (codes.has(code) ? [words] : []));
}

/** `window set by hand in 1 of 5 pulls · lags taken out`; '' where all counted pulls are read as they come. */
export function trialTreatmentText(view: TrialInView): string {
  const read = countedPulls(view).map((one) => treatmentWords(one.view));
  return Object.values(WORDS)
    .flatMap((words) => {
      const number = read.filter((ofPull) => ofPull.includes(words)).length;
      if (number === 0) return [];
      return [number === read.length ? words : `${words} in ${number} of ${read.length} pulls`];
    })
    .join(' · ');
}
