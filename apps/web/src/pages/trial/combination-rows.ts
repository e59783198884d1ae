import type { TrialPage } from '@pullbook/views';

/** One combination of a trial that is being changed. */
export interface CombinationRow {
  /** Names the row while it moves; not the combination, which may be chosen anew. */
  rowId: number;
  /** '' not chosen yet */
  combinationId: string;
  shortName: string;
  /** Pulls of a combination that joins, to be counted at once. */
  pullIds: readonly string[];
}

export function rowsOf({ combinations }: Pick<TrialPage, 'combinations'>): CombinationRow[] {
  return combinations.map(({ id, shortName }, index) => ({
    rowId: index,
    combinationId: id,
    shortName,
    pullIds: [],
  }));
}

export function withBlankRow(rows: readonly CombinationRow[]): CombinationRow[] {
  const rowId = Math.max(...rows.map((row) => row.rowId)) + 1;
  return [...rows, { rowId, combinationId: '', shortName: '', pullIds: [] }];
}

/** The row one place nearer to the baseline. */
export function movedUp(rows: readonly CombinationRow[], index: number): CombinationRow[] {
  const row = rows[index];
  if (row === undefined || index === 0) return [...rows];
  return rows.toSpliced(index, 1).toSpliced(index - 1, 0, row);
}

/** Whether combinations, their order or their names are others than those of the trial. */
export function combinationsDiffer(
  page: Pick<TrialPage, 'combinations'>,
  rows: readonly CombinationRow[],
): boolean {
  const told = (all: { id: string; shortName: string }[]) => JSON.stringify(all);
  return (
    told(page.combinations.map(({ id, shortName }) => ({ id, shortName }))) !==
    told(rows.map(({ combinationId, shortName }) => ({ id: combinationId, shortName: shortName.trim() })))
  );
}
