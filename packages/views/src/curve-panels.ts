import type { ChartLine, ChartMark, ChartPanel, LineStyle } from '@pullbook/charts';
import { type ChannelMeaning, MEANINGS } from '@pullbook/core/pull';
import { bandText } from './band-text.ts';
import { meaningDisplay } from './channel-display.ts';
import type { CombinationInTrial, PullInTrial, TrialInView } from './trial-in-view.ts';

/** What a panel of the stack shows besides its curves. */
export interface CurvePanel {
  meaning: ChannelMeaning;
  share: number;
  /** Missing: the channel's own name, no decimals. */
  title?: string;
  decimals?: number;
  /** Of figures that run with their line; missing: as `decimals`. */
  runningDecimals?: number;
  /** After the unit. */
  note: string;
  zeroLine: boolean;
  /** Names at the ends: key and short name, the key alone, or nothing on a small picture. */
  labels: 'names' | 'keys' | 'none';
  /** A figure beside the name at the end. */
  endValue: (combination: CombinationInTrial) => string | null;
  /** Thin lines for each pull, faint ones for the rejected; or for those that count alone. */
  pulls: boolean | 'counted';
  marks: boolean;
}

/** A panel with a thick line for each combination's mean, or `null` where no combination has the channel. */
export function curvePanel(view: TrialInView, panel: CurvePanel): ChartPanel | null {
  const lines = view.combinations.flatMap((combination) => [
    ...(panel.pulls === true ? uncountedLines(view, combination, panel.meaning) : []),
    ...(panel.pulls ? pullLines(view, combination, panel.meaning) : []),
    ...meanLine(view, combination, panel),
  ]);
  if (!lines.some((line) => line.weight === 'mean')) return null;
  const { label, unit } = meaningDisplay(panel.meaning, view.show);
  return {
    id: panel.meaning,
    title: panel.title ?? label,
    unit,
    note: panel.note,
    decimals: panel.decimals ?? 0,
    ...(panel.runningDecimals === undefined ? {} : { runningDecimals: panel.runningDecimals }),
    share: panel.share,
    zeroLine: panel.zeroLine,
    lines,
    bands: [],
    marks:
      panel.marks && (panel.meaning === 'power' || panel.meaning === 'torque')
        ? peakMarks(view, panel.meaning)
        : [],
  };
}

function meanLine(view: TrialInView, combination: CombinationInTrial, panel: CurvePanel): ChartLine[] {
  const mean = combination.figures?.channels.get(panel.meaning)?.mean;
  if (!view.comparison || !mean?.some(Number.isFinite)) return [];
  const label =
    panel.labels === 'none'
      ? null
      : {
          key: combination.key,
          name: panel.labels === 'names' ? combination.shortName : '',
          value: panel.endValue(combination),
        };
  return [
    {
      id: combination.key,
      style: styleOf(combination),
      weight: 'mean',
      ...plottedCurve(view, view.comparison.engineSpeedRpm, mean, panel.meaning),
      label,
    },
  ];
}

/** Each counted pull where there are several: one pull is its own mean. */
function pullLines(view: TrialInView, combination: CombinationInTrial, meaning: ChannelMeaning): ChartLine[] {
  const repeats = combination.figures?.channels.get(meaning)?.pulls ?? [];
  return (repeats.length > 1 ? repeats : []).map(
    ({ pullId, values }): ChartLine => ({
      id: pullId,
      style: styleOf(combination),
      weight: 'pull',
      ...plottedCurve(view, view.comparison!.engineSpeedRpm, values, meaning),
      label: null,
    }),
  );
}

/** Each pull that does not count, on its own nodes. */
const uncountedLines = (
  view: TrialInView,
  combination: CombinationInTrial,
  meaning: ChannelMeaning,
): ChartLine[] =>
  combination.pulls
    .filter(({ role }) => role !== 'counted')
    .flatMap((pull) => rejectedLine(view, combination, pull, meaning));

function rejectedLine(
  view: TrialInView,
  combination: CombinationInTrial,
  { pull, view: { curve } }: PullInTrial,
  meaning: ChannelMeaning,
): ChartLine[] {
  const values = curve?.channels.get(meaning);
  if (!curve || !values?.some(Number.isFinite)) return [];
  return [
    {
      id: pull.id,
      style: styleOf(combination),
      weight: 'rejected',
      ...plottedCurve(view, curve.engineSpeedRpm, values, meaning),
      label: null,
    },
  ];
}

/** A curve in the units shown, without the empty ends; empty nodes inside break the line. */
export function plottedCurve(
  { show }: Pick<TrialInView, 'show'>,
  engineSpeedRpm: ArrayLike<number>,
  values: Float64Array,
  meaning: ChannelMeaning,
): { x: number[]; y: (number | null)[] } {
  const first = values.findIndex(Number.isFinite);
  const last = values.findLastIndex(Number.isFinite);
  const x: number[] = [];
  const y: (number | null)[] = [];
  for (let index = first; index <= last && first >= 0; index += 1) {
    x.push(engineSpeedRpm[index]!);
    y.push(show.plotted(values[index]!, MEANINGS[meaning].kind));
  }
  return { x, y };
}

function peakMarks(view: TrialInView, meaning: 'power' | 'torque'): ChartMark[] {
  return view.combinations.flatMap((combination): ChartMark[] => {
    const peak = meaning === 'power' ? combination.figures?.peakPower : combination.figures?.peakTorque;
    const y = peak ? view.show.plotted(peak.value, meaning) : null;
    if (!peak || y === null) return [];
    const text = peak.stillClimbing
      ? `${view.show.quantity(peak.value, meaning, { decimals: 0 })}, still climbing`
      : view.show.peak(peak, meaning);
    const band = meaning === 'power' ? (combination.figures?.peakPowerBand ?? null) : null;
    const longText = band === null ? {} : { longText: `${text} (${bandText(view.show, band)})` };
    return [
      {
        style: styleOf(combination),
        x: Math.round(peak.atRpm),
        y,
        text,
        ...longText,
        stillClimbing: peak.stillClimbing,
      },
    ];
  });
}

export const styleOf = (combination: CombinationInTrial): LineStyle => ({ combination: combination.index });
