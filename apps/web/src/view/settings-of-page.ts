import type { ViewChoices } from './view-choices.ts';

const FIRST: ViewChoices = {
  theme: 'system',
  units: 'us',
  decimalMark: '.',
  letterKeys: true,
  correction: 'sae-j1349',
};

/** The shop's settings, which the server wrote into the page itself: the first picture has them already. */
export function settingsOfPage(): ViewChoices {
  const written = document.querySelector<HTMLMetaElement>('meta[name="shop-settings"]')?.content ?? '';
  if (written === '') return FIRST;
  const { theme, units, decimalMark, letterKeys, correction } = JSON.parse(written) as ViewChoices;
  return { theme, units, decimalMark, letterKeys, correction };
}
