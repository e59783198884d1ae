import type { ReadColumn } from '../model.ts';
import type { RowsRead } from './rows-read.ts';

/** Rows before a repeated header that say how far apart rows are. */
const LOOKED_AT_ROWS = 50;
/** A step over a page break is at most so many times the largest before it. */
const WIDEST_STEP = 3;
/** A step back of less than this share of the way come is jitter. */
const JITTER_SHARE = 0.1;

/**
 * The repeated headers that start a new pull. Where time (without it, engine speed) goes on from where it stood, the header
 * only stands at the top of a new page of a report, and the rows around it are one pull.
 */
export function withoutPageBreaks(
  newStarts: RowsRead['newStarts'],
  columns: readonly Pick<ReadColumn, 'guess' | 'values'>[],
): RowsRead['newStarts'] {
  const of = (meaning: string) => columns.find(({ guess }) => guess.meaning === meaning)?.values;
  const values = of('time') ?? of('engineSpeed');
  if (!values) return newStarts;
  let from = 0;
  return newStarts.filter(({ row }) => {
    const goesOn = continues(values.subarray(from, row + 1));
    if (!goesOn) from = row;
    return !goesOn;
  });
}

/** Whether the last value goes on from the ones before it. */
function continues(values: Float64Array): boolean {
  const known = values.filter((value) => !Number.isNaN(value));
  const [first, last, next] = [known[0], known.at(-2), known.at(-1)] as [number, number, number];
  if (known.length < 3 || Number.isNaN(values.at(-1))) return false;
  let largest = 0;
  for (let row = Math.max(1, known.length - LOOKED_AT_ROWS); row < known.length - 1; row++)
    largest = Math.max(largest, Math.abs((known[row] as number) - (known[row - 1] as number)));
  const step = next - last;
  const onward = step * (last - first) > 0 || Math.abs(step) < JITTER_SHARE * Math.abs(last - first);
  return onward && Math.abs(step) <= WIDEST_STEP * largest;
}
