import { correctionById, undoCorrection } from '@pullbook/core/air';
import { thingsChanged } from '@pullbook/core/trial';
import { wholeTens } from './showing.ts';
import { surveyCaveats } from './survey-table.ts';
import { type CombinationInTrial, isInvented, type TrialInView } from './trial-in-view.ts';
import { counted, inSentence, listed } from './wording.ts';

/** What a careful reader must know before believing the answer: one sentence each, what matters most first. */
export function caveats(view: TrialInView): string[] {
  return [
    ...surveyCaveats(view),
    ...notReached(view),
    ...severalChanges(view),
    ...peaksAlone(view),
    ...stillClimbing(view),
    ...signChanges(view),
    ...setUpsApart(view),
    ...observedBeside(view),
    ...holes(view),
    ...(isInvented(view)
      ? ['Invented data: it shows how Pullbook works and says nothing of a real engine.']
      : []),
  ];
}

function notReached({ comparison }: TrialInView): string[] {
  if (!comparison || comparison.correction.reached) return [];
  const asked = correctionById(comparison.correction.asked)?.name ?? comparison.correction.asked;
  return [
    `Figures stand ${comparison.correction.standard === 'observed' ? 'as observed' : 'as recorded'}: not every counted pull can be brought to ${asked}. The remarks name what is missing.`,
  ];
}

/** What a printed or remembered highest figure lets be said, and what not. */
const peaksAlone = ({ comparison }: TrialInView): string[] =>
  (comparison?.peakGains ?? []).map(({ why }) => why);

/** More than one part or package differs: the gain cannot be given to one of them. */
function severalChanges(view: TrialInView): string[] {
  return view.gains.flatMap(({ changed }) => {
    const things = thingsChanged(view.answer.changes[changed.key] ?? []).map(inSentence);
    if (things.length < 2) return [];
    return [
      `${changed.key} differs from ${view.baseline.key} in more than one thing: ${listed(things)}. The gain belongs to all of them together.`,
    ];
  });
}

function stillClimbing({ combinations, show }: TrialInView): string[] {
  const climbing = combinations.filter(({ figures }) => figures?.peakPower?.stillClimbing);
  if (climbing.length === 0) return [];
  const ends = climbing.map(
    ({ key, figures }) => `${key} at ${show.speed(wholeTens(figures!.peakPower!.atRpm))}`,
  );
  const one = climbing.length === 1;
  return [
    `Power is still climbing where the ${one ? 'pull ends' : 'pulls end'} (${listed(ends)}): ${one ? 'that is' : 'those are'} the highest ${one ? 'figure' : 'figures'} measured, not ${one ? 'a peak' : 'peaks'}.`,
  ];
}

/** More places than these are the noise of two curves that lie on one another. */
const MOST_PLACES = 2;

/** Where the gain changes sign, for a mean hides it; not where nothing of it is clear of the noise. */
function signChanges({ gains, show }: TrialInView): string[] {
  return gains.flatMap(({ gain, changed }) => {
    const places = gain.crossoversRpm.map((rpm) => show.speed(wholeTens(rpm)));
    if (places.length === 0 || gain.band?.clearRanges.length === 0) return [];
    const signed = (watt: number) => show.quantity(watt, 'power', { decimals: 0, sign: true });
    const where =
      places.length > MOST_PLACES
        ? `${places.length} times between ${places[0]} and ${places.at(-1)}`
        : `at ${listed(places)}`;
    return [
      `Not the same everywhere: the gain of ${changed.key} changes sign ${where}; it lies between ${signed(gain.smallest.power)} at ${show.speed(gain.smallest.atRpm)} and ${signed(gain.largest.power)} at ${show.speed(gain.largest.atRpm)}.`,
    ];
  });
}

/** Taking apart and another day bring a scatter of their own, which repeats in one set-up cannot show; a band has it in it. */
function setUpsApart(view: TrialInView): string[] {
  return view.gains.flatMap(({ gain, changed }) => {
    const setUps = (item: CombinationInTrial) => new Set(item.counted.map(({ pull }) => pull.setUpId));
    const shared = [...setUps(view.baseline)].some((id) => id !== null && setUps(changed).has(id));
    if (shared || gain.band !== null || Math.abs(gain.meanPowerRatio) > 0.05) return [];
    return [
      `${view.baseline.key} and ${changed.key} are different set-ups: taking apart and putting together alone moves power by about ${view.show.perCent(0.005)} on the same day and ${view.show.perCent(0.01)} from one day to another (common practice, no source). The scatter of repeats does not show it.`,
    ];
  });
}

/** On a supercharged engine the observed figure stands beside the corrected one, with what the standard says. */
function observedBeside(view: TrialInView): string[] {
  const applied = view.comparison?.correction;
  if (!applied || applied.standard === 'observed' || !applied.reached) return [];
  const standard = correctionById(applied.standard);
  const figures = view.combinations
    .filter(({ supercharged, figures: compared }) => supercharged && compared !== null)
    .flatMap((item) => {
      const observed = observedHighest(item);
      const corrected = item.figures?.peakPower?.value;
      if (observed === null || corrected === undefined) return [];
      return [`${item.key} ${view.show.power(observed)} against ${view.show.power(corrected)}`];
    });
  if (figures.length === 0 || !standard) return [];
  return [
    `Highest power observed against corrected: ${listed(figures)}. About ${standard.name}: ${inSentence(standard.supercharged)}`,
  ];
}

/** Mean over the counted pulls of the highest observed power, W; `null` where a factor is unknown. */
export function observedHighest({ counted: pulls }: CombinationInTrial): number | null {
  const observed = pulls.map(({ view }) =>
    view.peakPower && view.correction.factor
      ? undoCorrection(view.peakPower.value, view.correction.factor)
      : Number.NaN,
  );
  const mean = observed.reduce((sum, value) => sum + value, 0) / observed.length;
  return Number.isFinite(mean) ? mean : null;
}

/** Engine speeds inside the window of the averages at which a counted pull has no figure. */
function holes(view: TrialInView): string[] {
  const { comparison, show } = view;
  const window = comparison?.averagesWindowRpm;
  if (!comparison || !window) return [];
  return view.combinations.flatMap(({ key, figures }) => {
    const power = figures?.channels.get('power')?.mean;
    if (!power) return [];
    const empty = [...comparison.engineSpeedRpm].filter(
      (rpm, index) => rpm >= window[0] && rpm <= window[1] && !Number.isFinite(power[index]),
    );
    if (empty.length === 0) return [];
    const places =
      empty.length <= 3 ? listed(empty.map((rpm) => show.speed(rpm))) : counted(empty.length, 'engine speed');
    return [`${key} has no figure at ${places} inside the window: left out of the averages, not filled in.`];
  });
}
