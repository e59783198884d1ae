import type { ReadColumn } from '../model.ts';
import type { RowsRead } from './rows-read.ts';

/** A new pull begins within so many steps of where the first one began. */
const NEAR_STEPS = 2;
/** Without a time, engine speed comes back so near to its start, as a share of the way it came. */
const NEAR_SHARE = 0.1;
/** A step back of less than this share of the way come is jitter. */
const LEAST_SHARE = 0.5;
/** Fewer rows than this between two steps back are no pull: the rows are out of order. */
const LEAST_ROWS = 5;

type Known = Pick<ReadColumn, 'guess' | 'values'>;

/**
 * Rows at which time (without it, engine speed) steps back at once to where it began: one log after another in a file that
 * does not part them. No engine falls from its highest speed to its lowest between two rows. Empty where the rows between are too few.
 */
export function startsAgain(columns: readonly Known[]): RowsRead['newStarts'] {
  const of = (meaning: string) => columns.find(({ guess }) => guess.meaning === meaning)?.values;
  const time = of('time');
  const values = time ?? of('engineSpeed');
  if (!values) return [];
  const starts: number[] = [];
  let from = 0;
  for (let row = 1; row < values.length; row++) {
    if (!isBackAtStart(values, from, row, time !== undefined)) continue;
    if (row - from < LEAST_ROWS) return [];
    starts.push(row);
    from = row;
  }
  return values.length - from < LEAST_ROWS ? [] : starts.map((row) => ({ row, words: '' }));
}

function isBackAtStart(values: Float64Array, from: number, row: number, isTime: boolean): boolean {
  const first = values[from] as number;
  const last = values[row - 1] as number;
  const way = last - first;
  const back = last - (values[row] as number);
  // A missing reading makes each of these false.
  if (!(Math.abs(back) > LEAST_SHARE * Math.abs(way)) || !(back * way > 0)) return false;
  const near = isTime ? NEAR_STEPS * Math.abs(way / (row - 1 - from)) : NEAR_SHARE * Math.abs(way);
  return Math.abs((values[row] as number) - first) <= near && (isTime || Math.abs(way) > LEAST_SWEEP_RPM);
}

/** A step test may go up and down by single steps; a sweep covers more. r/min; common practice, no source. */
const LEAST_SWEEP_RPM = 1000;
