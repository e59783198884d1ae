import type { TrialPage } from '@pullbook/views';

/** One combination of a trial that is being changed. */
export interface CombinationRow {
  /** Names the row while it moves; not the combination, which may be chosen anew. */
  rowId: number;
  /** '' not chosen yet */
  combinationId: string;
  shortName: string;
  /** Whether the engine was taken apart for it, coming from the baseline; `null`: told by the parts that changed. */
  takenApart: boolean | null;
  /** Pulls of a combination that joins, to be counted at once. */
  pullIds: readonly string[];
}

export function rowsOf({ combinations }: Pick<TrialPage, 'combinations'>): CombinationRow[] {
  return combinations.map(({ id, shortName, takenApart }, index) => ({
    rowId: index,
    combinationId: id,
    shortName,
    takenApart,
    pullIds: [],
  }));
}

export function withBlankRow(rows: readonly CombinationRow[]): CombinationRow[] {
  const rowId = Math.max(...rows.map((row) => row.rowId)) + 1;
  return [...rows, { rowId, combinationId: '', shortName: '', takenApart: null, pullIds: [] }];
}

/** The row one place nearer to the baseline. */
export function movedUp(rows: readonly CombinationRow[], index: number): CombinationRow[] {
  const row = rows[index];
  if (row === undefined || index === 0) return [...rows];
  return rows.toSpliced(index, 1).toSpliced(index - 1, 0, row);
}

/** What is said of the engine for all but the first, by the keys the rows give. */
export function takenApartOf(
  rows: readonly Pick<CombinationRow, 'takenApart'>[],
): Record<string, boolean | null> {
  return Object.fromEntries(
    rows.slice(1).map(({ takenApart }, index) => [String.fromCharCode(66 + index), takenApart]),
  );
}

/** Whether combinations, their order, their names or what is said of the engine are others than those of the trial. */
export function combinationsDiffer(
  page: Pick<TrialPage, 'combinations'>,
  rows: readonly CombinationRow[],
): boolean {
  const told = (all: readonly Omit<CombinationRow, 'rowId' | 'pullIds'>[]) =>
    JSON.stringify([all.map((one) => [one.combinationId, one.shortName.trim()]), takenApartOf(all)]);
  return told(rowsOf(page)) !== told(rows);
}
