import type { ChartDescription, ChartPanel } from '@pullbook/charts';
import { gainPanel } from '../gain-panel.ts';
import { windowMark } from '../trial-chart.ts';
import type { TrialInView } from '../trial-in-view.ts';
import { CHANNELS, channelPanel } from './panels.ts';

/** What the pictures of one set share: the engine speeds shown, and what the axis of each panel has to span. */
export interface Scale {
  xRange: [low: number, high: number];
  /** By id of the panel. */
  reach: ReadonlyMap<string, [low: number, high: number]>;
}

/** The scale of a trial's set, of everything that any of its pictures may draw; `null`: there is no curve. */
export function scaleOf(view: TrialInView): Scale | null {
  const panels = [
    ...CHANNELS.map((meaning) => channelPanel(view, meaning, { pulls: 'counted', marks: true })),
    gainPanel(view, 1),
  ].filter((panel) => panel !== null);
  const xRange = spanOf(panels.flatMap(({ lines }) => lines.flatMap(({ x }) => x)));
  if (xRange === null) return null;
  const reach = panels.flatMap((panel) => {
    const span = spanOf(heightsOf(panel));
    return span === null ? [] : [[panel.id, notTooNarrow(span)] as const];
  });
  return { xRange, reach: new Map(reach) };
}

/** Panels under one axis at the set's scale; `null` where none of them has a line. */
export function stackAt(
  view: TrialInView,
  scale: Scale | null,
  panels: readonly (ChartPanel | null)[],
): ChartDescription | null {
  const shown = panels.filter((panel) => panel !== null);
  if (scale === null || !shown.some(({ lines }) => lines.length > 0)) return null;
  return {
    xTitle: 'Engine speed',
    xUnit: view.show.unit('engineSpeed'),
    xRange: scale.xRange,
    xWindow: windowMark(view, scale.xRange),
    panels: shown.map((panel) => {
      const reach = scale.reach.get(panel.id);
      return reach === undefined ? panel : { ...panel, reach };
    }),
    decimalMark: view.show.options.decimalMark,
    alternative: '',
  };
}

function heightsOf({ lines, bands, marks, zeroLine }: ChartPanel): number[] {
  return [
    ...lines.flatMap(({ y }) => y),
    ...bands.flatMap(({ low, high }) => [...low, ...high]),
    ...marks.map(({ y }) => y),
    ...(zeroLine ? [0] : []),
  ].filter((value) => value !== null);
}

/** Curves that lie on one level are not blown up until their noise fills the picture. */
const LEAST_SHARE = 0.05;

function notTooNarrow([low, high]: [number, number]): [low: number, high: number] {
  const lacking = LEAST_SHARE * Math.max(Math.abs(low), Math.abs(high)) - (high - low);
  return lacking <= 0 ? [low, high] : [low - lacking / 2, high + lacking / 2];
}

function spanOf(values: readonly number[]): [low: number, high: number] | null {
  if (values.length === 0) return null;
  const low = values.reduce((least, value) => Math.min(least, value), Number.POSITIVE_INFINITY);
  return [low, values.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY)];
}
