import type { Comparison, Verdict } from '@pullbook/core/compare';
import { atMostPerCent, bandText, gainDecimals } from './band-text.ts';
import { clearAndRest } from './clear-ranges.ts';
import type { ViewOptions } from './model.ts';
import { type SaidGain, saidGainOf } from './said-gain.ts';
import type { Showing } from './showing.ts';
import { standardName } from './standard-name.ts';
import { counted } from './wording.ts';

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
 * What the verdict's word is said with, '' where no scatter is known to judge by: `+15 hp (11 to 19, 95 %) · 3 pulls against 2,
 * 2 set-ups · same day · SAE J1349 · clear above 5,000 rpm, within the noise below`.
 */
export function verdictFigures(said: SaidGain): string {
  const { gain, comparison, show } = said;
  if (gain.verdict === null || gain.band === null) return '';
  const { word } = gain.verdict;
  const isClaimed = word === 'clear' || word === 'likely';
  const decimals = gainDecimals(show, gain.meanPower, gain.band.meanPower, isClaimed);
  const figure = show.quantity(gain.meanPower, 'power', { decimals, sign: true });
  return [
    `${figure} (${bandText(show, gain.band.meanPower, { decimals })}, 95\u00a0%)`,
    `${pullsAgainst(gain.verdict)}, ${setUpsWords(said)}`,
    dayWords(comparison),
    standardName(comparison.correction),
    clearAndRest(said),
  ]
    .filter(Boolean)
    .join(' · ');
}

/** The verdict of a comparison without a trial in one line, its word first: `Clear · +15 hp (11 to 19, 95 %) · …`; '' without one. */
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

/** `3 pulls against 2`, `one pull against one` */
function pullsAgainst({ pulls: { baseline, changed } }: Verdict): string {
  return baseline === 1 && changed === 1
    ? 'one pull against one'
    : `${counted(baseline, 'pull')} against ${changed}`;
}

/** `2 set-ups`; `one set-up` where the engine was not taken apart between them. */
function setUpsWords({ gain: { band, verdict, changedKey } }: SaidGain): string {
  const { baseline, changed } = verdict!.setUps;
  const own = band!.scatter.gains.find(({ group }) => group === changedKey);
  if (baseline === 1 && changed === 1) return own?.parts.setUp === 0 ? 'one set-up' : '2 set-ups';
  return `${counted(baseline, 'set-up')} against ${changed}`;
}

function dayWords({ conditions }: Comparison): string {
  const day = conditions.find(({ id }) => id === 'day');
  if (day === undefined) return '';
  return { alike: 'same day', differs: 'different days', unknown: 'days not noted' }[day.state];
}
