import type { ChartDescription, ChartLine, ChartMark, ChartPanel } from '@pullbook/charts';
import type { Pull, PullView } from '@pullbook/core/pull';
import { channelDisplay } from './channel-display.ts';
import type { RecordedLook } from './model.ts';
import { type RecordedAxis, type Stretch, stretchesOf, stretchWithin } from './recorded-axis.ts';
import type { RecordedChannel } from './recorded-channels.ts';
import { rowsToDraw } from './rows-to-draw.ts';
import type { Showing } from './showing.ts';
import { spikeGroups, spikeMarkText } from './spike-lines.ts';
import { counted, inSentence, listed } from './wording.ts';

/** Columns of a screen that all panels of a recording share: what a page of them can take on its way. */
const ALL_COLUMNS = 8000;
const MOST_COLUMNS = 1000;
/** Marks that one panel bears. */
const MOST_MARKS = 40;

/**
 * Channels as recorded over time, the row's number or engine speed; what counts strong, what is cut faint, numbered where
 * it has a place of its own on the axis, spikes marked. Nothing is corrected or left out, but no more is drawn than a
 * screen shows.
 */
export function recordedChart(
  pull: Pull,
  view: PullView,
  axis: RecordedAxis,
  channels: readonly RecordedChannel[],
  range: RecordedLook['range'],
  show: Showing,
): ChartDescription | null {
  if (channels.length === 0) return null;
  const stretches = stretchesOf(view, axis.x.length).flatMap(
    (stretch) => stretchWithin(stretch, axis, range) ?? [],
  );
  const columns = Math.min(MOST_COLUMNS, Math.floor(ALL_COLUMNS / channels.length));
  const panels = channels.map((one) => recordedPanel(one, axis, stretches, columns, view, show));
  return {
    xTitle: axis.title,
    xUnit: axis.unit,
    xRange: axis.reach,
    xWindow: windowMark(view, axis, show),
    xCuts: cutMarks(view, axis),
    xDecimals: axis.decimals,
    panels,
    decimalMark: show.options.decimalMark,
    alternative: `${pull.name} as recorded over ${inSentence(axis.title)}, ${counted(axis.x.length, 'row')}: ${listed(panels.map(({ title }) => inSentence(title)))}.`,
  };
}

/** Finer than any screen, and short on its way. */
const short = (value: number): number => Number(value.toPrecision(7));

function recordedPanel(
  { id, channel }: RecordedChannel,
  axis: RecordedAxis,
  stretches: readonly Stretch[],
  columns: number,
  view: PullView,
  show: Showing,
): ChartPanel {
  const display = channelDisplay(channel, show);
  const own = Math.ceil(columns / Math.max(1, stretches.length));
  return {
    id,
    title: display.label,
    unit: display.unit,
    note: '',
    decimals: 0,
    share: channel.meaning === 'engineSpeed' || channel.meaning === 'torque' ? 1 : 0.7,
    zeroLine: false,
    lines: stretches.map(({ fromRow, toRow, counted }): ChartLine => {
      const rows = rowsToDraw(channel.values, fromRow, toRow, own).filter((row) =>
        Number.isFinite(axis.x[row]),
      );
      return {
        id: `${channel.name} from row ${fromRow + 1}`,
        style: 'ink',
        weight: counted ? 'pull' : 'rejected',
        x: rows.map((row) => short(axis.x[row]!)),
        y: rows.map((row) => {
          const height = display.plotted(channel.values[row]!);
          return height === null ? null : short(height);
        }),
        label: null,
      };
    }),
    bands: [],
    marks: spikeMarks({ id, channel }, axis, view, show),
  };
}

/** Every spike is marked; the one that stands out most has its figure. */
function spikeMarks(
  { channel }: RecordedChannel,
  { x }: RecordedAxis,
  { spikes }: PullView,
  show: Showing,
): ChartMark[] {
  const display = channelDisplay(channel, show);
  return spikeGroups(spikes.filter(({ meaning }) => meaning === channel.meaning)).flatMap((group) => {
    const others = group.spikes.filter((spike) => spike !== group.furthest);
    return [group.furthest, ...others].slice(0, MOST_MARKS).flatMap((spike): ChartMark[] => {
      const y = display.plotted(spike.value);
      const at = x[spike.row];
      if (at === undefined || !Number.isFinite(at) || y === null) return [];
      const text = spike === group.furthest ? spikeMarkText(group, show) : '';
      return [{ style: 'ink', x: at, y, text, stillClimbing: false }];
    });
  });
}

function windowMark({ window }: PullView, { over, x }: RecordedAxis, show: Showing) {
  if (!window) return null;
  const text = `counted: ${show.speedRange(window.windowRpm)}`;
  if (over === 'speed') return { range: window.windowRpm, text };
  const range = rangeOfRows(x, window.fromRow, window.toRow);
  return range && { range, text };
}

/** Over engine speed what is cut lies on what counts, so only over time or rows is it shaded. */
function cutMarks({ window }: PullView, { over, x }: RecordedAxis): NonNullable<ChartDescription['xCuts']> {
  if (!window || over === 'speed') return [];
  return window.cuts.flatMap(({ fromRow, toRow }, index) => {
    const isBefore = toRow < window.fromRow;
    const range = rangeOfRows(x, isBefore ? fromRow : fromRow - 1, isBefore ? toRow + 1 : toRow);
    return range ? [{ range, label: `${index + 1}` }] : [];
  });
}

function rangeOfRows(x: ArrayLike<number>, fromRow: number, toRow: number): [number, number] | null {
  const [from, to] = [x[fromRow], x[toRow]];
  if (from === undefined || to === undefined || !(from < to)) return null;
  return [from, to];
}
