import { daysText } from './date.ts';
import { pullsOfEach } from './rests-on.ts';
import { standardName } from './standard-name.ts';
import { trialTreatmentText } from './treatment-words.ts';
import { countedPulls, fullName, type TrialInView } from './trial-in-view.ts';
import { repeatsWords } from './verdict-line.ts';
import { capitalised, counted } from './wording.ts';

/**
 * What the answer rests on beside what its sentence and the verdict's line say, in one line: factors, what was set about the
 * reading of the pulls, days. Where the sentence has no figures to rest, pulls, repeats, window and standard too.
 */
export function basisLine(view: TrialInView): string {
  if (countedPulls(view).length === 0) return 'No counted pull.';
  const peaksAlone = (view.comparison?.peakGains.length ?? 0) > 0;
  const isSaid = view.gains.length > 0 || peaksAlone || (view.state === 'survey' && view.comparison !== null);
  const hasLine = view.gains.length > 0 && view.gains.every(({ gain }) => gain.verdict !== null);
  const facts = [
    isSaid ? '' : pullsText(view),
    hasLine ? '' : repeatsText(view),
    isSaid ? commonText(view) : windowText(view),
    isSaid ? factorWords(view) : standardText(view),
    trialTreatmentText(view),
    hasLine ? '' : setUpsText(view),
    daysText(countedPulls(view).map(({ pull }) => pull.recordedAt)),
  ];
  return capitalised(facts.filter(Boolean).join(' · '));
}

/** `averages from 4,000 to 6,500 rpm` */
function windowText({ comparison, show }: TrialInView): string {
  const averages = comparison?.averagesWindowRpm;
  return averages ? `averages from ${show.speedRange(averages)}` : '';
}

/** `3,000 to 6,500 rpm in common`; '' where the averages take all of it. */
function commonText({ comparison, show }: TrialInView): string {
  const averages = comparison?.averagesWindowRpm;
  const common = comparison?.commonWindowRpm;
  if (!averages || !common) return '';
  const isPart = averages[0] > common[0] || averages[1] < common[1];
  return isPart ? `${show.speedRange(common)} in common` : '';
}

/** `SAE J1349, factor 1.013 to 1.023`; `observed`; `as recorded`. */
export function standardText(view: TrialInView): string {
  const applied = appliedIn(view);
  return applied ? [standardName(applied), factorWords(view)].filter(Boolean).join(', ') : '';
}

/** `factor 1.013 to 1.023`; '' where none was applied or known. */
function factorWords(view: TrialInView): string {
  const applied = appliedIn(view);
  const factors = factorsText(view);
  const plain = !applied?.reached || applied.standard === 'observed' || factors === '';
  return plain ? '' : `factor ${factors}`;
}

const appliedIn = (view: TrialInView) =>
  view.comparison?.correction ?? countedPulls(view)[0]?.view.correction;

/** Lowest and highest factor of the counted pulls; '' where none is known. */
function factorsText(view: TrialInView): string {
  const factors = countedPulls(view).flatMap(({ view: { correction } }) => correction.factor ?? []);
  if (factors.length === 0) return '';
  const [low, high] = [Math.min(...factors), Math.max(...factors)].map(view.show.factor);
  return low === high ? `${low}` : `${low} to ${high}`;
}

function pullsText({ combinations }: TrialInView): string {
  const filled = combinations.filter((combination) => combination.counted.length > 0);
  return pullsOfEach(filled.map(({ key, counted: pulls }) => ({ key, pulls: pulls.length })));
}

const repeatsText = (view: TrialInView): string =>
  repeatsWords(
    view.show,
    view.combinations.flatMap(({ figures }) => figures ?? []),
  );

function setUpsText(view: TrialInView): string {
  const ids = countedPulls(view).map(({ pull }) => pull.setUpId);
  if (ids.length === 0 || ids.includes(null)) return '';
  return counted(new Set(ids).size, 'set-up');
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
