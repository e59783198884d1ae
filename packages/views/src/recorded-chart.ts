import type { ChartDescription, ChartMark, ChartPanel } from '@pullbook/charts';
import { type Channel, channelOf, type Pull, type PullView } from '@pullbook/core/pull';
import { channelDisplay } from './channel-display.ts';
import type { Showing } from './showing.ts';
import { spikeGroups, spikeMarkText } from './spike-lines.ts';
import { counted, inSentence, listed } from './wording.ts';

/** Channels in the order they are read: the sweep first, then what it made, then what it lived on. */
const ORDER: readonly Channel['meaning'][] = [
  'engineSpeed',
  'throttle',
  'torque',
  'power',
  'boost',
  'manifoldPressure',
  'dischargePressure',
  'lambda',
  'airFuelRatio',
  'fuelFlow',
  'airFlow',
  'inletAirTemperature',
  'chargeTemperature',
];

/**
 * Channels as recorded over time, or over the row's number where there is no time; accepted rows marked, spikes named.
 * Nothing is corrected or left out. `null` for a pull without channels.
 */
export function recordedChart(pull: Pull, view: PullView, show: Showing): ChartDescription | null {
  const time = channelOf(pull, 'time');
  const rows = pull.channels[0]?.values.length ?? 0;
  if (rows === 0) return null;
  const x = time ? [...time.values] : Array.from({ length: rows }, (_, row) => row + 1);
  const known = x.filter(Number.isFinite);
  const drawn = inOrder(
    pull.channels.filter((channel) => channel.meaning !== 'time' && channel.values.some(Number.isFinite)),
  );
  if (known.length === 0 || drawn.length === 0) return null;
  const panels = drawn.map((channel, index) => recordedPanel(channel, `${index}`, x, view, show));
  return {
    xTitle: time ? 'Time' : 'Row',
    xUnit: time ? 's' : '',
    xRange: [extreme(known, Math.min), extreme(known, Math.max)],
    xWindow: windowMark(view, x, show),
    panels,
    decimalMark: show.options.decimalMark,
    alternative: `${pull.name} as recorded, ${counted(rows, 'row')}: ${listed(panels.map(({ title }) => inSentence(title)))}.`,
  };
}

function recordedPanel(channel: Channel, id: string, x: number[], view: PullView, show: Showing): ChartPanel {
  const display = channelDisplay(channel, show);
  const rows = x.flatMap((at, row) => (Number.isFinite(at) ? [row] : []));
  return {
    id,
    title: display.label,
    unit: display.unit,
    note: '',
    decimals: 0,
    share: channel.meaning === 'engineSpeed' || channel.meaning === 'torque' ? 1 : 0.7,
    zeroLine: false,
    lines: [
      {
        id: channel.name,
        style: 'ink',
        weight: 'pull',
        x: rows.map((row) => x[row]!),
        y: rows.map((row) => display.plotted(channel.values[row]!)),
        label: null,
      },
    ],
    bands: [],
    marks: spikeMarks(channel, x, view, show),
  };
}

/** The spike that stands out most has its mark; the line shows them all. */
function spikeMarks(channel: Channel, x: number[], { spikes }: PullView, show: Showing): ChartMark[] {
  return spikeGroups(spikes.filter(({ meaning }) => meaning === channel.meaning)).flatMap(
    (group): ChartMark[] => {
      const at = x[group.furthest.row] ?? Number.NaN;
      const y = channelDisplay(channel, show).plotted(group.furthest.value);
      if (!Number.isFinite(at) || y === null) return [];
      return [{ style: 'ink', x: at, y, text: spikeMarkText(group, show), stillClimbing: false }];
    },
  );
}

function windowMark({ window }: PullView, x: number[], show: Showing): ChartDescription['xWindow'] {
  const ends = window ? [x[window.fromRow], x[window.toRow]] : [];
  const [from, to] = ends;
  if (!window || from === undefined || to === undefined || !Number.isFinite(from) || !Number.isFinite(to))
    return null;
  return { range: [from, to], text: `counted: ${show.speedRange(window.windowRpm)}` };
}

function inOrder(channels: Channel[]): Channel[] {
  const place = ({ meaning }: Channel) => (ORDER.includes(meaning) ? ORDER.indexOf(meaning) : ORDER.length);
  return channels.toSorted((one, other) => place(one) - place(other));
}

const extreme = (values: number[], pick: (one: number, other: number) => number): number =>
  values.reduce((one, other) => pick(one, other));
