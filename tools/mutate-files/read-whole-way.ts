import { defaultRecipe, viewPull } from '@pullbook/core/pull';
import { guessedMapping, pullsFromReading, readTextFile } from '@pullbook/formats';
import { inventedPull } from '../../packages/core/src/pull/invented-pull.testing.ts';
import { linesOf, type Outcome, placeFaults, refusedOutcome } from './outcome.ts';

/** Takes bytes the whole way: text, columns, guessed meanings, pulls, views. */
export function readWholeWay(bytes: Uint8Array, name: string): Outcome {
  const reading = readTextFile(bytes, name);
  if (!reading.ok) return refusedOutcome(bytes, reading.remarks);
  const faults = placeFaults(reading.remarks, linesOf(bytes));
  const { columns, rowCount, groups, lineOfRow } = reading.value;
  if (columns.some(({ values }) => values.length !== rowCount)) faults.push('a column has not all rows');
  if (lineOfRow.length !== rowCount) faults.push('a row has no line');
  if (
    columns.some(({ values }) =>
      values.some((value) => value === Number.POSITIVE_INFINITY || value === -Infinity),
    )
  )
    faults.push('a reading is infinite');
  for (const [at, { fromRow, toRow }] of groups.entries())
    if (fromRow !== (at === 0 ? 0 : groups[at - 1]!.toRow + 1) || toRow < fromRow)
      faults.push('the blocks of rows leave rows out or overlap');
  if (groups.at(-1)?.toRow !== rowCount - 1) faults.push('the last rows are in no block');
  const pulls = pullsFromReading(reading.value, guessedMapping(reading.value));
  if (!pulls.ok) return refusedOutcome(bytes, pulls.remarks, { before: faults });
  for (const draft of pulls.value) {
    const speed = draft.channels.find(({ meaning }) => meaning === 'engineSpeed');
    if (!speed?.values.some(Number.isFinite)) faults.push('an accepted pull has no engine speed');
    const view = viewPull(inventedPull(draft.channels), defaultRecipe('observed'));
    if (view.curve === null && view.remarks.length === 0) faults.push('a pull has no curve and no reason');
    if (view.peakPower !== null && !Number.isFinite(view.peakPower.value)) faults.push('a peak is no number');
  }
  return { refusedFor: null, pulls: pulls.value.length, faults };
}
