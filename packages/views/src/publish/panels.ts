import type { ChartPanel } from '@pullbook/charts';
import { type ChannelMeaning, MEANINGS } from '@pullbook/core/pull';
import { bandText, gainDecimals } from '../band-text.ts';
import { meaningDisplay } from '../channel-display.ts';
import { type CurvePanel, curvePanel, styleOf } from '../curve-panels.ts';
import { gainPanel } from '../gain-panel.ts';
import { standardName } from '../standard-name.ts';
import { boostNote } from '../trial-chart.ts';
import type { CombinationInTrial, TrialInView } from '../trial-in-view.ts';

/** Channels that pictures show, in the order in which they stand. */
export const CHANNELS = [
  'power',
  'torque',
  'boost',
  'chargeTemperature',
  'lambda',
  'airFuelRatio',
] as const satisfies readonly ChannelMeaning[];
type Shown = (typeof CHANNELS)[number];

const TITLES: Partial<Record<Shown, string>> = {
  chargeTemperature: 'Charge temperature',
  lambda: 'Mixture λ',
  airFuelRatio: 'Mixture',
};

/** Of what a picture tells with fewer decimals than a table. */
const DECIMALS: Partial<Record<Shown, number>> = { power: 0, torque: 0, lambda: 2, airFuelRatio: 1 };

/** More curves than these are named by their key and name alone: their figures stand in a table. */
const MOST_WITH_FIGURES = 4;
/** Bands of more gains than these would cover one another. */
export const MOST_BANDS = 3;

/** One channel's panel as pictures have it: names at the ends with the figure that the picture is about. */
export function channelPanel(
  view: TrialInView,
  meaning: Shown,
  more: Partial<Pick<CurvePanel, 'share' | 'pulls' | 'marks' | 'labels' | 'endValue'>> = {},
): ChartPanel | null {
  const withFigures = view.combinations.filter(({ figures }) => figures !== null);
  const own = meaning === 'power' || meaning === 'torque' ? highestText : lastText;
  const decimals = DECIMALS[meaning];
  const panel = curvePanel(view, {
    meaning,
    share: 1,
    note: noteOf(view, meaning),
    zeroLine: meaning === 'boost',
    labels: 'names',
    endValue: (item) => (withFigures.length > MOST_WITH_FIGURES ? null : own(view, item, meaning)),
    pulls: false,
    marks: false,
    ...(decimals === undefined ? {} : { decimals }),
    runningDecimals: decimals ?? MEANINGS[meaning].decimals[view.show.options.units],
    ...(TITLES[meaning] === undefined ? {} : { title: TITLES[meaning] }),
    ...more,
  });
  // The sign of the mixture is no unit: it stands before its figures, in the title.
  return panel !== null && meaning === 'lambda' ? { ...panel, unit: '' } : panel;
}

function noteOf(view: TrialInView, meaning: Shown): string {
  if (meaning === 'boost') return boostNote(view);
  const isCorrected = meaning === 'power' || meaning === 'torque';
  return isCorrected && view.comparison ? standardName(view.comparison.correction) : '';
}

/** `538 hp, still climbing`; `330 hp at 6,260 rpm` */
export function highestText(
  { show }: TrialInView,
  { figures }: CombinationInTrial,
  meaning: ChannelMeaning,
): string | null {
  const kind = meaning === 'torque' ? 'torque' : 'power';
  const peak = kind === 'torque' ? figures?.peakTorque : figures?.peakPower;
  if (!peak) return null;
  return peak.stillClimbing
    ? `${show.quantity(peak.value, kind, { decimals: 0 })}, still climbing`
    : show.peak(peak, kind);
}

/** What a combination's mean ends with, in the unit it has inside; `undefined`: it has none. */
export const lastOf = (figures: CombinationInTrial['figures'], meaning: ChannelMeaning): number | undefined =>
  figures?.channels.get(meaning)?.mean.findLast(Number.isFinite);

/** The last figure of a mean, which is where its name stands. */
export function lastText(
  { show }: TrialInView,
  { figures }: CombinationInTrial,
  meaning: ChannelMeaning,
): string | null {
  const last = lastOf(figures, meaning);
  if (last === undefined) return null;
  return meaning === 'lambda'
    ? show.number(last, 'ratio', { decimals: DECIMALS.lambda! })
    : meaningDisplay(meaning, show).text(last);
}

/** `+37 hp (17 to 56)`: a gain where its curve ends, with the band that is drawn round it. */
function lastGain(
  { show }: TrialInView,
  { power, band }: TrialInView['gains'][number]['gain'],
): string | null {
  const node = power.findLastIndex(Number.isFinite);
  const last = power[node];
  if (last === undefined) return null;
  const ends: [number, number] = [
    band?.simultaneous.low[node] ?? Number.NaN,
    band?.simultaneous.high[node] ?? Number.NaN,
  ];
  const isJudged = ends.every(Number.isFinite);
  const decimals = isJudged ? gainDecimals(show, last, ends) : 0;
  const gained = show.quantity(last, 'power', { decimals, sign: true });
  return isJudged ? `${gained} (${bandText(show, ends, { decimals })})` : gained;
}

/** The gain's panel under lines' names of their own, each in its combination's look where there are several. */
export function gainOf(view: TrialInView, share: number): ChartPanel | null {
  const panel = gainPanel(view, share);
  if (panel === null) return null;
  const isOne = panel.lines.length === 1;
  const showsBands = panel.lines.length <= MOST_BANDS;
  const styles = view.gains.map(({ changed }) => (isOne ? 'ink' : styleOf(changed)));
  const banded = view.gains.flatMap(({ gain }, place) => (gain.band === null ? [] : [styles[place]!]));
  return {
    ...panel,
    note: showsBands ? panel.note : 'bands stand in the table',
    lines: panel.lines.map((line, place) => ({
      ...line,
      id: `gain ${line.id}`,
      style: styles[place]!,
      label: line.label && {
        ...line.label,
        value: panel.lines.length > MOST_BANDS ? null : lastGain(view, view.gains[place]!.gain),
      },
    })),
    bands: showsBands ? panel.bands.map((band, place) => ({ ...band, style: banded[place] ?? 'ink' })) : [],
  };
}

/** The same trial with one combination of it alone: its colour and dash stay. */
export const onlyOf = (view: TrialInView, item: CombinationInTrial): TrialInView => ({
  ...view,
  combinations: [item],
  gains: [],
});
