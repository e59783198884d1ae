import type { ComparedCombination, Comparison, Gain, Verdict } from '@pullbook/core/compare';
import { atMostPerCent, bandPerCent } from './band-text.ts';
import { clearWords } from './clear-ranges.ts';
import type { ViewOptions } from './model.ts';
import { type SaidGain, saidGainOf } from './said-gain.ts';
import type { Showing } from './showing.ts';
import { listed } from './wording.ts';

/** `Clear`, `Likely`, `No difference larger than 0.9 %`, `Within the noise`. */
export function verdictWords(show: Showing, verdict: Verdict): string {
  switch (verdict.word) {
    case 'clear':
      return 'Clear';
    case 'likely':
      return 'Likely';
    case 'no-difference':
      return `No difference larger than ${atMostPerCent(show, verdict.noDifferenceLargerThan, verdict.worthwhileRatio)}`;
    case 'within-noise':
      return 'Within the noise';
  }
}

/**
 * What stands beside the verdict's word and is not in the sentence, '' where no scatter is known to judge by: `+3.9 % (+0.7 to
 * +7.2 %, 95 %) · same day · repeats scatter A 0.1 % and B 0.3 %`. `isOneOfSeveral`: where it is clear too, for then the
 * sentence does not say it.
 */
export function verdictFigures(said: SaidGain, { isOneOfSeveral = false } = {}): string {
  const { gain, comparison, show } = said;
  if (gain.verdict === null || gain.band === null) return '';
  const share = show.perCent(gain.meanPowerRatio, { sign: true });
  return [
    `${share} (${bandPerCent(show, gain.band.meanPowerRatio)}, at 95\u00a0%)`,
    isOneOfSeveral ? clearWords(said) : '',
    lookWords(gain),
    dayWords(comparison),
    repeatsWords(
      show,
      comparison.combinations.filter(({ key }) => key === gain.baselineKey || key === gain.changedKey),
    ),
  ]
    .filter(Boolean)
    .join(' · ');
}

/** The verdict of a comparison without a trial in one line, its word first: `Clear · +3.9 % (…) · same day · …`; '' without one. */
export function comparisonVerdictLine(
  comparison: Comparison,
  changedKey: string,
  names: Readonly<Record<string, string>>,
  options: ViewOptions,
): string {
  const said = saidGainOf(comparison, changedKey, names, options);
  const verdict = said?.gain.verdict ?? null;
  return said === null || verdict === null
    ? ''
    : `${verdictWords(said.show, verdict)} · ${verdictFigures(said)}`;
}

/** `look 1 of 2 planned`: the band is wider than of one look, and more pulls are to come. */
function lookWords({ band, changedKey }: Gain): string {
  const look = band?.scatter.gains.find(({ group }) => group === changedKey)?.look ?? null;
  return look === null ? '' : `look ${look.number} of ${look.of} planned`;
}

function dayWords({ conditions }: Comparison): string {
  const day = conditions.find(({ id }) => id === 'day');
  if (day === undefined) return '';
  return { alike: 'same day', differs: 'different days', unknown: 'days not noted' }[day.state];
}

/** How far repeats scatter, as a fact and no more; combinations without a repeat are named. */
export function repeatsWords(show: Showing, compared: readonly ComparedCombination[]): string {
  const known = compared.filter(({ repeatSpread }) => repeatSpread !== null);
  if (compared.length === 0) return '';
  if (known.length === 0) return 'no pull was repeated';
  // Two repeats that happen to meet do not show that repeats never scatter.
  const text = (spread: number) => (spread < 0.0005 ? `under ${show.perCent(0.001)}` : show.perCent(spread));
  const spreads = listed(known.map(({ key, repeatSpread }) => `${key} ${text(repeatSpread ?? 0)}`));
  const alone = compared.filter(({ repeatSpread }) => repeatSpread === null).map(({ key }) => key);
  return `repeats scatter ${spreads}${alone.length > 0 ? `, ${listed(alone)} has no repeat` : ''}`;
}
