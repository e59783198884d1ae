import type { Comparison } from '@pullbook/core/compare';
import { bandText, gainDecimals } from './band-text.ts';
import { clauseOf, gainSentence } from './gain-sentence.ts';
import type { SentencePart, ViewOptions } from './model.ts';
import { listRestsOn } from './rests-on.ts';
import { type SaidGain, saidGainOf, saidGains } from './said-gain.ts';
import { type Showing, showingIn } from './showing.ts';
import { asSubject, fullName, type TrialInView } from './trial-in-view.ts';
import { listed } from './wording.ts';

/**
 * The answer in one sentence, in parts so that its figure can be set apart and what it rests on held back. Rules, in this order:
 *
 * 1. Not answered: what was not measured; highest figures alone where that is all there is.
 * 2. A survey: each combination's own figures, no gain.
 * 3. Several changed combinations: the mean gain of each against A, with its band and verdict.
 * 4. One: `gainSentence`.
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
      // Nothing is missing of a trial that has but one: it was measured, and there is nothing beside it.
      if (view.missing.length === 0)
        return [{ text: `Nothing to compare yet: ${asSubject(view.baseline)} is the only combination.` }];
      return [
        {
          text: `Not measured: no pull of ${listed(
            view.missing.map((item) => item.shortName || item.key),
            'or',
          )} yet.`,
        },
      ];
    case 'no common window':
      return (
        peaksAlone(view.comparison, namesOf(view), view.show) ?? [
          { text: `Not comparable: ${windowsApart(view)}.` },
        ]
      );
  }
}

/** The same sentence of one combination of a comparison without a trial. `names`: short name by key, for who has one. */
export function comparisonSentence(
  comparison: Comparison,
  changedKey: string,
  names: Readonly<Record<string, string>>,
  options: ViewOptions,
): SentencePart[] {
  const said = saidGainOf(comparison, changedKey, names, options);
  if (said !== null) return gainSentence(said);
  const own = {
    ...comparison,
    peakGains: comparison.peakGains.filter((one) => one.changedKey === changedKey),
  };
  return (
    peaksAlone(own, names, showingIn(options)) ?? [
      { text: 'Not comparable: the pulls have no figure at any engine speed in common.' },
    ]
  );
}

function answered(view: TrialInView): SentencePart[] {
  const said = saidGains(view);
  const [only] = said;
  if (!only) return [{ text: 'Not comparable: the counted pulls share no figure at any engine speed.' }];
  return said.length > 1 ? several(said, only) : gainSentence(only);
}

/** Several changes against one baseline: all means in one window. */
function several(said: SaidGain[], { baseline, comparison, window, show }: SaidGain): SentencePart[] {
  const clauses = said.map(({ gain, changed }) => clauseOf(show, gain, asSubject(changed)));
  const joined = clauses.flatMap((clause, index): SentencePart[] => {
    if (index === 0) return clause;
    return [{ text: index === clauses.length - 1 ? ' and ' : '; ' }, ...clause];
  });
  return [
    { text: `Against ${baseline.key}, on average from ${show.speedRange(window)}: ` },
    ...joined,
    ...listRestsOn(comparison),
  ];
}

/** Where one side has only printed or remembered figures: what the highest ones let be said. `null`: nothing. */
function peaksAlone(
  comparison: Comparison | null,
  names: Readonly<Record<string, string>>,
  show: Showing,
): SentencePart[] | null {
  const peaks = comparison?.peakGains ?? [];
  if (peaks.length === 0) return null;
  const clauses = peaks.flatMap(({ baselineKey, changedKey, gain, low, high }, index): SentencePart[] => {
    const decimals = gainDecimals(show, gain, [low, high]);
    const name = asSubject({ key: changedKey, shortName: names[changedKey] ?? '' });
    return [
      { text: `${index === 0 ? '' : '; '}${name} reads ` },
      { text: show.quantity(Math.abs(gain), 'power', { decimals }), strong: true },
      {
        text: ` ${gain >= 0 ? 'more' : 'less'} than ${baselineKey} (${bandText(show, [low, high], { decimals, size: true })})`,
      },
    ];
  });
  return [{ text: 'Only the highest figures can be compared: ' }, ...clauses, ...listRestsOn(comparison)];
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
    ? `Side by side, on average from ${show.speedRange(window)}: `
    : 'Side by side, at their highest: ';
  const listed = figures.flatMap(({ name, figure }, index): SentencePart[] => [
    { text: `${index === 0 ? lead : '; '}${name}, ` },
    { text: figure, strong: true },
  ]);
  return [...listed, ...listRestsOn(comparison)];
}

function windowsApart(view: TrialInView): string {
  const windows = view.combinations.flatMap((combination) =>
    combination.counted.flatMap(({ view: { window } }) =>
      window ? [`${combination.key} was pulled from ${view.show.speedRange(window.windowRpm)}`] : [],
    ),
  );
  return windows.length === 0 ? 'the pulls share no engine speed' : listed([...new Set(windows)]);
}

const namesOf = ({ combinations }: TrialInView): Record<string, string> =>
  Object.fromEntries(combinations.map(({ key, shortName }) => [key, shortName]));

/** The sentence as plain text, with what it rests on. */
export function plainText(parts: readonly SentencePart[]): string {
  return parts.map((part) => part.text).join('');
}
