import { channelOf, type Pull, type PullView } from '@pullbook/core/pull';
import { channelDisplay } from './channel-display.ts';
import type { CursorTable, RecordedLook, RecordedPage } from './model.ts';
import { type RecordedAxis, stretchWithin } from './recorded-axis.ts';
import type { RecordedChannel } from './recorded-channels.ts';
import type { Showing } from './showing.ts';

/** Places where the cursor of a recording can stand; between them a closer look goes finer. */
const MOST_PLACES = 800;
/** Engine speed between two places of the window's ends. */
const STEP_RPM = 50;

/** The exact figures of each channel at these rows. */
export function recordedCursor(
  rows: readonly number[],
  { x }: RecordedAxis,
  channels: readonly RecordedChannel[],
  show: Showing,
): CursorTable | null {
  if (rows.length === 0 || channels.length === 0) return null;
  return {
    at: rows.map((row) => x[row]!),
    columns: [{ key: 'As recorded', combination: null }],
    rows: channels.map(({ id, channel }) => {
      const display = channelDisplay(channel, show);
      return {
        id,
        name: display.label,
        unit: display.unit,
        cells: [rows.map((row) => display.number(channel.values[row]!))],
      };
    }),
    start: Math.floor(rows.length / 2),
  };
}

/** Rows where the cursor can stand, ascending along the axis; over engine speed those that count. */
export function cursorRows({ window }: PullView, axis: RecordedAxis, range: RecordedLook['range']): number[] {
  const { x, over, reach } = axis;
  const countedOnly = over === 'speed' && window;
  const whole = {
    fromRow: countedOnly ? window.fromRow : 0,
    toRow: countedOnly ? window.toRow : x.length - 1,
    counted: true,
  };
  const stretch = stretchWithin(whole, axis, range);
  if (stretch === null) return [];
  const [low, high] = range ?? reach;
  const step = Math.max(1, Math.ceil((stretch.toRow - stretch.fromRow + 1) / MOST_PLACES));
  const rows: number[] = [];
  for (let row = stretch.fromRow; row <= stretch.toRow; row += step) rows.push(row);
  const ends = window ? [window.fromRow, window.toRow] : [];
  const ascending = [...new Set([...rows, ...ends])]
    .filter((row) => x[row]! >= low && x[row]! <= high)
    .toSorted((one, other) => x[one]! - x[other]!);
  return ascending.filter((row, index) => index === 0 || x[row]! > x[ascending[index - 1]!]!);
}

/**
 * Where an end of the accepted window can be set: at whole steps of engine speed, or at a row that has one; and where it
 * is now, rounded outwards, so that an end that is let be loses no row.
 */
export function windowStepsOf(
  pull: Pull,
  { window }: PullView,
  { over, x, reach }: RecordedAxis,
  rows: readonly number[],
): RecordedPage['windowSteps'] {
  const speeds = channelOf(pull, 'engineSpeed')?.values;
  if (!speeds) return { at: [], engineSpeedRpm: [] };
  const [lowEnd, highEnd] = window?.windowRpm ?? reach;
  const [lowest, highest] = [Math.floor(lowEnd), Math.ceil(highEnd)];
  if (over === 'speed') {
    const [first, last] = [Math.max(1, Math.ceil(reach[0] / STEP_RPM)), Math.floor(reach[1] / STEP_RPM)];
    const count = Math.max(0, last - first + 1);
    const whole = Array.from({ length: count }, (_, step) => STEP_RPM * (first + step));
    const steps = [...new Set([...whole, lowest, highest])].toSorted((one, other) => one - other);
    return { at: steps, engineSpeedRpm: steps };
  }
  const turning = rows.filter((row) => speeds[row]! > 0);
  const speedOf = (row: number) => {
    if (row === window?.fromRow) return window.direction === 'rising' ? lowest : highest;
    if (row === window?.toRow) return window.direction === 'rising' ? highest : lowest;
    return Math.round(speeds[row]!);
  };
  return { at: turning.map((row) => x[row]!), engineSpeedRpm: turning.map(speedOf) };
}
