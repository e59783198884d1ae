import { daysText } from './date.ts';
import { standardName } from './standard-name.ts';
import { trialTreatmentText } from './treatment-words.ts';
import { type CombinationInTrial, countedPulls, fullName, type TrialInView } from './trial-in-view.ts';
import { counted, listed } from './wording.ts';

/**
 * What the answer rests on, in one line: the gain with its share, pulls and their repeats, the window, the standard with
 * its factors, what was set about the reading of the pulls, set-ups, days. Gain in power, pulls and set-ups
 * stand in the verdict's line where there is one.
 */
export function basisLine(view: TrialInView): string {
  if (countedPulls(view).length === 0) return 'No counted pull.';
  const hasLine = view.gains.length > 0 && view.gains.every(({ gain }) => gain.verdict !== null);
  return [
    ...view.gains.map(({ gain, changed }) => {
      const share = view.show.perCent(gain.meanPowerRatio, { sign: true });
      const gained = view.show.quantity(gain.meanPower, 'power', { decimals: 1, sign: true });
      const figure = hasLine ? share : `${gained} (${share})`;
      return `${view.gains.length > 1 ? `${changed.key} ` : ''}${figure} on average`;
    }),
    hasLine ? '' : pullsText(view),
    repeatsText(view),
    windowText(view),
    standardText(view),
    trialTreatmentText(view),
    hasLine ? '' : setUpsText(view),
    daysText(countedPulls(view).map(({ pull }) => pull.recordedAt)),
  ]
    .filter(Boolean)
    .join(' · ');
}

/** `averages from 4,000 to 6,500 rpm`; says the common window too where the averages take only part of it. */
export function windowText({ comparison, show }: TrialInView): string {
  const averages = comparison?.averagesWindowRpm;
  const common = comparison?.commonWindowRpm;
  if (!averages || !common) return '';
  const isPart = averages[0] > common[0] || averages[1] < common[1];
  return `averages from ${show.speedRange(averages)}${isPart ? `, of ${show.speedRange(common)} in common` : ''}`;
}

/** `SAE J1349, factor 1.013 to 1.023`; `observed`; `as recorded`. */
export function standardText(view: TrialInView): string {
  const applied = view.comparison?.correction ?? countedPulls(view)[0]?.view.correction;
  if (!applied) return '';
  const factors = factorsText(view);
  const plain = applied.standard === 'observed' || !applied.reached || factors === '';
  return plain ? standardName(applied) : `${standardName(applied)}, factor ${factors}`;
}

/** Lowest and highest factor of the counted pulls; '' where none is known. */
export function factorsText(view: TrialInView): string {
  const factors = countedPulls(view).flatMap(({ view: { correction } }) => correction.factor ?? []);
  if (factors.length === 0) return '';
  const [low, high] = [Math.min(...factors), Math.max(...factors)].map(view.show.factor);
  return low === high ? `${low}` : `${low} to ${high}`;
}

/** `3 pulls against 2`; `A 3 pulls, B 2, C 2`. */
export function pullsText(view: TrialInView): string {
  const filled = view.combinations.filter((combination) => combination.counted.length > 0);
  const [first, second] = filled;
  if (!first) return '';
  if (view.state === 'answered' && filled.length === 2 && second) {
    return first.counted.length === 1 && second.counted.length === 1
      ? 'one pull against one'
      : `${counted(first.counted.length, 'pull')} against ${second.counted.length}`;
  }
  return listed(filled.map(({ key, counted: pulls }) => `${key} ${counted(pulls.length, 'pull')}`));
}

/** How far repeats scatter, as a fact and no more; `one pull` combinations are named. */
function repeatsText(view: TrialInView): string {
  const compared = view.combinations.filter(({ figures }) => figures !== null);
  const known = compared.filter(({ figures }) => figures?.repeatSpread !== null);
  if (compared.length === 0) return '';
  if (known.length === 0) return 'nothing here tells how far repeats scatter';
  const spread = ({ figures }: CombinationInTrial) => spreadText(view, figures?.repeatSpread ?? 0);
  const spreads = listed(known.map((item) => `${item.key} ${spread(item)}`));
  const alone = compared.filter(({ figures }) => figures?.repeatSpread === null).map(({ key }) => key);
  return `repeats scatter ${spreads}${alone.length > 0 ? `, ${listed(alone)} has no repeat` : ''}`;
}

function setUpsText(view: TrialInView): string {
  const ids = countedPulls(view).map(({ pull }) => pull.setUpId);
  if (ids.length === 0 || ids.includes(null)) return '';
  return counted(new Set(ids).size, 'set-up');
}

/** `0.4 %`; two repeats that happen to meet do not show that repeats never scatter. */
function spreadText({ show }: TrialInView, spread: number): string {
  return spread < 0.0005 ? `under ${show.perCent(0.001)}` : show.perCent(spread);
}

/** What is still needed, one line a combination without a counted pull. */
export function missingLines(view: TrialInView): string[] {
  const common = view.comparison?.commonWindowRpm;
  const range = common
    ? ` from ${view.show.speedRange(common)}, so that it covers what the others cover`
    : '';
  return view.missing.map(
    (combination) =>
      `A pull of ${fullName(combination)}: put it on the brake and make two pulls or more${range}. Without it nothing measured answers the question.`,
  );
}
