import type { ChartDescription, ChartPanel } from '@pullbook/charts';
import { curvePanel } from './curve-panels.ts';
import { gainPanel } from './gain-panel.ts';
import { answerSentence, plainText } from './sentence.ts';
import { standardName } from './standard-name.ts';
import { fullName, type TrialInView } from './trial-in-view.ts';
import { capitalised, inSentence, listed } from './wording.ts';

/** The trial's stack: power, torque, boost where any pull has it, and the gain. `null`: there is no curve to draw. */
export function trialChart(view: TrialInView): ChartDescription | null {
  const common = { labels: 'keys', endValue: () => null, pulls: true, marks: true } as const;
  const standard = view.comparison ? standardName(view.comparison.correction) : '';
  const stack = stackOf(view, [
    curvePanel(view, {
      ...common,
      meaning: 'power',
      share: 1.6,
      note: standard,
      zeroLine: false,
      labels: 'names',
    }),
    curvePanel(view, { ...common, meaning: 'torque', share: 1, note: standard, zeroLine: false }),
    curvePanel(view, { ...common, meaning: 'boost', share: 0.8, note: boostNote(view), zeroLine: true }),
    gainPanel(view, 0.9),
  ]);
  return stack && { ...stack, xWindow: averagesWindow(view) };
}

/** The window of the averages on the page, where it can be set anew, even where it is all that is shown. */
function averagesWindow({ comparison, show }: TrialInView): ChartDescription['xWindow'] {
  const range = comparison?.averagesWindowRpm ?? comparison?.commonWindowRpm;
  return range ? { range, text: `averages ${show.speedRange(range)}` } : null;
}

/** The small picture of a card: the power means alone. */
export function trialPicture(view: TrialInView): ChartDescription | null {
  const panel = curvePanel(view, {
    meaning: 'power',
    share: 1,
    note: '',
    zeroLine: false,
    labels: 'none',
    endValue: () => null,
    pulls: false,
    marks: false,
  });
  const picture = stackOf(view, [panel]);
  return picture && { ...picture, xWindow: null };
}

/** Panels under one engine-speed axis, from the lowest to the highest speed that any of their lines reaches. */
export function stackOf(view: TrialInView, panels: (ChartPanel | null)[]): ChartDescription | null {
  const shown = panels.filter((panel) => panel !== null);
  const reached = shown.flatMap((panel) => panel.lines.flatMap((line) => line.x));
  if (shown.length === 0 || reached.length === 0) return null;
  const xRange: [number, number] = [
    reached.reduce((low, x) => Math.min(low, x), Number.POSITIVE_INFINITY),
    reached.reduce((high, x) => Math.max(high, x), Number.NEGATIVE_INFINITY),
  ];
  return {
    xTitle: 'Engine speed',
    xUnit: view.show.unit('engineSpeed'),
    xRange,
    xWindow: windowMark(view, xRange),
    panels: shown,
    decimalMark: view.show.options.decimalMark,
    alternative: `${whatIsDrawn(view, shown, xRange)} ${plainText(answerSentence(view))}`,
  };
}

/** The window of the averages, where it is less than all that is shown. */
export function windowMark(
  { comparison, show }: TrialInView,
  shown: [number, number],
): ChartDescription['xWindow'] {
  const range = comparison?.averagesWindowRpm;
  if (!range || (range[0] <= shown[0] && range[1] >= shown[1])) return null;
  return { range, text: `averages ${show.speedRange(range)}` };
}

/** What the picture shows and the highest figures, for who cannot see it. */
export function whatIsDrawn(
  view: TrialInView,
  panels: readonly ChartPanel[],
  xRange: readonly [number, number],
): string {
  const names = listed(panels.map((panel) => (panel.id === 'gain' ? 'gain' : inSentence(panel.title))));
  const peaks = view.combinations.flatMap((combination) => {
    const peak = combination.figures?.peakPower;
    return peak ? [`${fullName(combination)}: ${view.show.peak(peak, 'power')}`] : [];
  });
  return [
    `${capitalised(names)} over engine speed from ${view.show.speedRange(xRange)}.`,
    peaks.length > 0 ? `${peaks.join('; ')}.` : '',
  ]
    .filter(Boolean)
    .join(' ');
}

/** Where boost was read, when all counted pulls that have it say the same place. */
export function boostNote(view: TrialInView): string {
  const boosted = view.combinations.filter(({ figures }) => figures?.channels.has('boost'));
  const taps = new Set(
    boosted.flatMap(({ counted }) => counted.map(({ pull }) => pull.places.boostTap ?? '')),
  );
  const [only = ''] = taps;
  if (taps.size > 1) return taps.has('') ? 'tap not noted for all' : 'taps differ';
  return only;
}
