import { type Remark, remark } from '@pullbook/core/remark';

/** Numbers a file may hold; at 8 bytes each they take half a gigabyte. */
export const MOST_CELLS = 60e6;
/** Wider than any logger: each column is guessed at and shown. */
export const MOST_COLUMNS = 10_000;
/** An original is handed out in one piece, and no larger one can be read so (2 GiB). */
export const MOST_BYTES = 2e9;
/** What has no line end for so long is no table. */
export const LONGEST_RECORD_BYTES = 16e6;

const inMillions = (count: number): string => String(Math.round(count / 1e6));

export function tooManyBytes(name: string, bytes: number): Remark {
  const message = `${name} has ${inMillions(bytes)} MB or more; at most ${inMillions(MOST_BYTES)} MB are read. Cut the log to the pulls.`;
  return remark('refusal', 'file-too-large', message, { line: 1 });
}

export function tooManyCells(name: string, columns: number, line: number): Remark {
  const message = `${name} holds more than ${inMillions(MOST_CELLS)} million numbers: with ${columns} columns that many are reached in line ${line}. Cut the log to the pulls, or leave channels out.`;
  return remark('refusal', 'file-too-large', message, { line });
}

export function tooManyColumns(name: string, columns: number, line: number): Remark {
  const message = `${name} has ${columns} columns; at most ${MOST_COLUMNS} are read. Export the channels that matter.`;
  return remark('refusal', 'too-many-columns', message, { line, column: MOST_COLUMNS + 1 });
}

export function tooLongRecord(name: string, line: number): Remark {
  const message = `${name} has no line end for more than ${inMillions(LONGEST_RECORD_BYTES)} MB after the start of line ${line}; a row of readings is far shorter. Export the run again as delimited text.`;
  return remark('refusal', 'line-too-long', message, { line });
}
