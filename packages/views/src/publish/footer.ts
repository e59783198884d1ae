import { standardText } from '../basis.ts';
import { daysText } from '../date.ts';
import { engineText, fuelText, superchargerText } from '../engine-line.ts';
import { isBig } from '../gain-sentence.ts';
import { pullsOfEach } from '../rests-on.ts';
import { standardName } from '../standard-name.ts';
import { trialTreatmentText } from '../treatment-words.ts';
import { countedPulls, isInvented, type TrialInView } from '../trial-in-view.ts';
import { capitalised, counted, listed } from '../wording.ts';
import { lastOf } from './panels.ts';

/** More combinations than these are counted together. */
const MOST_NAMED = 4;

/**
 * What a doubter asks for, in two lines: engine, fuel, supercharger, boost, mixture; then air, standard, pulls, days, and
 * whether anything is invented. Of the combinations in the view, each line as long as what is known.
 */
export function footer(view: TrialInView): string[] {
  return [
    [...engineFacts(view), boostText(view), mixtureText(view)],
    [
      // What no picture goes without first: a small one leaves out the later ones.
      standardText(view),
      pullsText(view),
      airText(view),
      trialTreatmentText(view),
      daysText(countedPulls(view).map(({ pull }) => pull.recordedAt)),
      isInvented(view) ? 'invented data' : '',
    ],
  ]
    .map((parts) => capitalised(parts.filter(Boolean).join(' · ')))
    .filter(Boolean);
}

/** The same for a picture that is seen small: what was measured, by which standard, how often. */
export function shortFooter(view: TrialInView): string[] {
  const standard = view.comparison ? standardName(view.comparison.correction) : '';
  const facts = [...engineFacts(view).slice(0, 2), standard, pullsText(view)];
  return [[...facts, isInvented(view) ? 'invented data' : ''].filter(Boolean).join(' · ')];
}

/** `3.8 L straight six`, `gasoline`, `centrifugal supercharger`: of those that were pulled, or of all where none was. */
export function engineFacts(view: TrialInView): string[] {
  const pulled = view.combinations.filter(({ figures }) => figures !== null);
  const built = (pulled.length > 0 ? pulled : view.combinations).flatMap(
    ({ combination }) => combination ?? [],
  );
  const engines = [...new Set(built.map(({ sheet }) => engineText(sheet, view.show.options)))];
  const fuels = [...new Set(built.map(({ sheet }) => fuelText(sheet)))];
  return [listed(engines.filter(Boolean)), listed(fuels.filter(Boolean)), superchargersText(view)].filter(
    Boolean,
  );
}

/** `A 3 pulls and B 2`; `20 pulls of 10 combinations` */
function pullsText({ combinations }: TrialInView): string {
  const pulled = combinations.filter(({ counted: pulls }) => pulls.length > 0);
  const all = pulled.reduce((sum, { counted: pulls }) => sum + pulls.length, 0);
  if (pulled.length === 0) return 'no counted pull';
  return pulled.length > MOST_NAMED
    ? `${counted(all, 'pull')} of ${pulled.length} combinations`
    : pullsOfEach(pulled.map(({ key, counted: pulls }) => ({ key, pulls: pulls.length })));
}

/** `centrifugal supercharger`; with the key where only some have one. */
function superchargersText(view: TrialInView): string {
  const shown = view.combinations.filter(({ figures, combination }) => figures && combination);
  const fitted = shown.filter(({ supercharged }) => supercharged);
  const types = [...new Set(fitted.map(({ combination }) => superchargerText(combination!.sheet)))];
  if (types.length === 0) return shown.length > 0 ? 'naturally aspirated' : '';
  return fitted.length === shown.length
    ? listed(types)
    : `${listed(types)} in ${listed(fitted.map(({ key }) => key))}`;
}

/** `boost at the end A 10.4, B 9.3 psi`: a small change has no room for a panel of it. */
function boostText(view: TrialInView): string {
  if (view.gains.length > 0 && view.gains.every(({ gain }) => isBig(gain))) return '';
  const boosted = view.combinations.flatMap(({ key, figures }) => {
    const last = lastOf(figures, 'boost');
    return last === undefined ? [] : [{ key, last }];
  });
  if (boosted.length === 0 || boosted.length > MOST_NAMED) return '';
  const figures = boosted.map(
    ({ key, last }) => `${key} ${view.show.number(last, 'gaugePressure', { decimals: 1 })}`,
  );
  return `boost at the end ${figures.join(', ')}\u00a0${view.show.unit('gaugePressure')}`;
}

function airText(view: TrialInView): string {
  const temperatures = countedPulls(view).flatMap(({ pull }) => pull.weather?.temperature ?? []);
  return spanText(view, temperatures, 'temperature', 'inlet air ');
}

function mixtureText(view: TrialInView): string {
  const mixtures = view.combinations
    .flatMap(({ figures }) => figures?.averages.get('lambda') ?? [])
    .filter(Number.isFinite);
  return spanText(view, mixtures, 'ratio', 'average λ\u00a0');
}

/** `inlet air 76 to 79 °F`; one figure where both ends are shown alike. */
function spanText(
  { show }: TrialInView,
  values: number[],
  kind: 'temperature' | 'ratio',
  lead: string,
): string {
  if (values.length === 0) return '';
  const more = kind === 'ratio' ? { decimals: 2 } : { decimals: 0 };
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const [first, last] = [show.number(low, kind, more), show.quantity(high, kind, more)];
  return first === show.number(high, kind, more) ? `${lead}${last}` : `${lead}${first} to ${last}`;
}
