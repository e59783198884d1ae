import { channelOf, type Pull, type PullView } from '@pullbook/core/pull';
import type { RecordedLook } from './model.ts';

/** The axis that a recording is drawn over. */
export interface RecordedAxis {
  over: RecordedLook['over'];
  title: string;
  unit: string;
  /** Decimals of the cursor's figure. */
  decimals: number;
  /** One value a row; not finite where the row cannot be placed. */
  x: ArrayLike<number>;
  /** Of all that can be placed. */
  reach: [low: number, high: number];
}

/** Time, the row's number where there is none, or engine speed; `null`: no row can be placed. */
export function recordedAxis(pull: Pull, over: RecordedLook['over'], speedUnit: string): RecordedAxis | null {
  const rows = pull.channels[0]?.values.length ?? 0;
  const channel = channelOf(pull, over === 'speed' ? 'engineSpeed' : 'time');
  if (rows === 0 || (over === 'speed' && !channel)) return null;
  const x = channel?.values ?? Array.from({ length: rows }, (_, row) => row + 1);
  const reach = reachOf(x);
  if (reach === null) return null;
  if (over === 'speed') return { over, title: 'Engine speed', unit: speedUnit, decimals: 0, x, reach };
  return channel
    ? { over, title: 'Time', unit: 's', decimals: 2, x, reach }
    : { over, title: 'Row', unit: '', decimals: 0, x, reach };
}

function reachOf(x: ArrayLike<number>): [number, number] | null {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let row = 0; row < x.length; row += 1) {
    const at = x[row]!;
    if (!Number.isFinite(at)) continue;
    if (at < low) low = at;
    if (at > high) high = at;
  }
  return low <= high ? [low, high] : null;
}

/** A run of rows that is drawn in one way. */
export interface Stretch {
  fromRow: number;
  toRow: number;
  counted: boolean;
}

/** The rows that count and those before and after; what is drawn of each reaches the other. */
export function stretchesOf({ window }: PullView, rows: number): Stretch[] {
  const last = rows - 1;
  if (!window) return [{ fromRow: 0, toRow: last, counted: true }];
  const { fromRow, toRow } = window;
  return [
    { fromRow: 0, toRow: fromRow, counted: false },
    { fromRow, toRow, counted: true },
    { fromRow: toRow, toRow: last, counted: false },
  ].filter((stretch) => stretch.toRow > stretch.fromRow || stretch.counted);
}

/** The part of a stretch that a range of the axis needs, with a row on either side; `null`: none of it. */
export function stretchWithin(
  stretch: Stretch,
  { x, reach }: RecordedAxis,
  range: RecordedLook['range'],
): Stretch | null {
  const [low, high] = range ?? reach;
  const isIn = (row: number) => x[row]! >= low && x[row]! <= high;
  let { fromRow, toRow } = stretch;
  while (fromRow <= toRow && !isIn(fromRow)) fromRow += 1;
  while (toRow >= fromRow && !isIn(toRow)) toRow -= 1;
  if (fromRow > toRow) return null;
  return {
    ...stretch,
    fromRow: Math.max(stretch.fromRow, fromRow - 1),
    toRow: Math.min(stretch.toRow, toRow + 1),
  };
}
