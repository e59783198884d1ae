import type { Gain } from '@pullbook/core/compare';
import type { SentencePart } from './model.ts';
import { type CombinationInTrial, fullName, type TrialInView } from './trial-in-view.ts';
import { listed } from './wording.ts';

/** From here on a change is big: the figures at the top of the window say more than the average alone. */
export const BIG_CHANGE_RATIO = 0.1;
/** A smaller step of boost than this is within what a gauge and its tap let pass, Pa. Common practice, no source. */
export const BOOST_STEP_WORTH_SAYING = 1700;

/**
 * The answer in one sentence, in parts so that its figure can be set apart. Rules, in this order:
 *
 * 1. Not answered: what was not measured.
 * 2. A survey: each combination's own figures, no gain.
 * 3. Several changed combinations: the mean gain of each against A.
 * 4. One: the mean gain over the averages' window. To it comes one more thing: that it is smaller than the spread of
 *    the repeats; or, from 10 % on, both figures at the top of the window; or, on two supercharged combinations, what
 *    happened to the boost at the top.
 *
 * Nothing here says how sure it is: the bands and verdicts that would are not computed yet.
 */
export function answerSentence(view: TrialInView): SentencePart[] {
  switch (view.state) {
    case 'answered':
      return answered(view);
    case 'survey':
      return survey(view);
    case 'no pulls':
      return [{ text: 'Not measured: no pull is counted yet.' }];
    case 'no baseline':
    case 'one combination':
      return [
        {
          text: `Not measured: no pull of ${listed(
            view.missing.map((item) => item.shortName || item.key),
            'or',
          )} yet.`,
        },
      ];
    case 'no common window':
      return [{ text: `Not comparable: ${windowsApart(view)}.` }];
  }
}

function answered(view: TrialInView): SentencePart[] {
  const window = view.comparison?.averagesWindowRpm;
  const [only] = view.gains;
  if (!window || !only)
    return [{ text: 'Not comparable: the counted pulls share no figure at any engine speed.' }];
  if (view.gains.length > 1) return several(view, window);
  const { gain, changed } = only;
  const over = `from ${view.show.speedRange(window)}`;
  const change: SentencePart[] = isWhole(view, gain.meanPower)
    ? [
        { text: `It ${gain.meanPower >= 0 ? 'adds' : 'costs'} ` },
        { text: `${view.show.power(Math.abs(gain.meanPower))} on average`, strong: true },
        { text: ` ${over}` },
      ]
    : [
        { text: 'It changes power by ' },
        { text: `less than ${oneUnit(view)} on average`, strong: true },
        { text: ` ${over}` },
      ];
  return [...change, ...tail(view, gain, changed, window)];
}

/** What stands after the mean gain, up to the full stop. */
function tail(
  view: TrialInView,
  gain: Gain,
  changed: CombinationInTrial,
  window: [number, number],
): SentencePart[] {
  const { show } = view;
  if (isWithinRepeats(view, gain, changed)) {
    return [
      {
        text: isWhole(view, gain.meanPower)
          ? ': smaller than the spread of the repeats.'
          : ', less than the spread of the repeats.',
      },
    ];
  }
  if (Math.abs(gain.meanPowerRatio) >= BIG_CHANGE_RATIO) {
    const top = atTop(view, changed, window);
    if (top) {
      return [
        { text: ', and ' },
        { text: show.power(Math.abs(top.changed - top.baseline)), strong: true },
        {
          text: ` at ${show.speed(top.rpm)}: ${show.number(top.changed, 'power', { decimals: 0 })} against ${show.number(top.baseline, 'power', { decimals: 0 })}.`,
        },
      ];
    }
  }
  if (
    view.baseline.supercharged &&
    changed.supercharged &&
    gain.topBoost !== null &&
    Math.abs(gain.topBoost) >= BOOST_STEP_WORTH_SAYING
  ) {
    const step = show.boostStep(gain.topBoost);
    const adds = gain.meanPower >= 0 && isWhole(view, gain.meanPower);
    if (gain.topBoost < 0) return [{ text: `, and takes ${step} off the boost at the top.` }];
    return [
      {
        text: adds
          ? `, with ${step} more boost at the top.`
          : `, and raises the boost by ${step} at the top.`,
      },
    ];
  }
  return [{ text: '.' }];
}

/** Several changes against one baseline: all means in one window. */
function several(view: TrialInView, window: [number, number]): SentencePart[] {
  const clauses = view.gains.map(({ gain, changed }): SentencePart[] => {
    const name = fullName(changed);
    if (!isWhole(view, gain.meanPower))
      return [{ text: `${name}, changes power by less than ${oneUnit(view)}` }];
    return [
      { text: `${name}, ${gain.meanPower >= 0 ? 'adds' : 'costs'} ` },
      { text: view.show.power(Math.abs(gain.meanPower)), strong: true },
    ];
  });
  const joined = clauses.flatMap((clause, index): SentencePart[] => {
    if (index === 0) return clause;
    return [{ text: index === clauses.length - 1 ? ' and ' : '; ' }, ...clause];
  });
  return [
    { text: `Against ${view.baseline.key}, on average from ${view.show.speedRange(window)}: ` },
    ...joined,
    { text: '.' },
  ];
}

/** Common figures side by side; different engines, so no gain. */
function survey(view: TrialInView): SentencePart[] {
  const { show, comparison } = view;
  const window = comparison?.averagesWindowRpm ?? null;
  const figures = view.combinations.flatMap((combination) => {
    const average = combination.figures?.averages.get('power');
    const peak = combination.figures?.peakPower;
    const name = fullName(combination);
    if (window && average !== undefined && Number.isFinite(average))
      return [{ name, figure: show.power(average) }];
    return !window && peak ? [{ name, figure: show.peak(peak, 'power') }] : [];
  });
  if (figures.length === 0) return [{ text: 'Not measured: no pull is counted yet.' }];
  const lead = window
    ? `Side by side, on average from ${show.speedRange(window)}. `
    : 'Side by side, at their highest. ';
  const listed = figures.flatMap(({ name, figure }, index): SentencePart[] => [
    { text: `${index === 0 ? lead : '; '}${name}: ` },
    { text: figure, strong: true },
  ]);
  return [...listed, { text: '.' }];
}

function windowsApart(view: TrialInView): string {
  const windows = view.combinations.flatMap((combination) =>
    combination.counted.flatMap(({ view: { window } }) =>
      window ? [`${combination.key} was pulled from ${view.show.speedRange(window.windowRpm)}`] : [],
    ),
  );
  return windows.length === 0 ? 'the pulls share no engine speed' : listed([...new Set(windows)]);
}

/** Both means at the highest speed of the window where both have a figure. */
export function atTop(
  view: TrialInView,
  changed: CombinationInTrial,
  window: [number, number],
): { rpm: number; baseline: number; changed: number } | null {
  const nodes = view.comparison?.engineSpeedRpm ?? new Float64Array();
  const before = view.baseline.figures?.channels.get('power')?.mean;
  const after = changed.figures?.channels.get('power')?.mean;
  for (let index = nodes.length - 1; index >= 0; index -= 1) {
    const rpm = nodes[index]!;
    const pair = [before?.[index] ?? Number.NaN, after?.[index] ?? Number.NaN] as const;
    if (rpm >= window[0] && rpm <= window[1] && pair.every(Number.isFinite)) {
      return { rpm, baseline: pair[0], changed: pair[1] };
    }
  }
  return null;
}

/** The mean gain is smaller than the larger of the two spreads of repeats. `false` where neither has repeats. */
export function isWithinRepeats(view: TrialInView, gain: Gain, changed: CombinationInTrial): boolean {
  const spreads = [view.baseline, changed].flatMap(({ figures }) => figures?.repeatSpread ?? []);
  return spreads.length > 0 && Math.abs(gain.meanPowerRatio) < Math.max(...spreads);
}

/** Whether a gain is at least one whole unit as shown. */
function isWhole(view: TrialInView, watt: number): boolean {
  return /[1-9]/.test(view.show.number(watt, 'power', { decimals: 0 }));
}

const oneUnit = (view: TrialInView): string => `1\u00a0${view.show.unit('power')}`;

/** The sentence as plain text. */
export function plainText(parts: readonly SentencePart[]): string {
  return parts.map((part) => part.text).join('');
}
