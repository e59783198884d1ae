import type { PullRow } from '@pullbook/views';

/** One combination of a trial that is being started. */
export interface TrialRow {
  /** '' not chosen yet */
  combinationId: string;
  shortName: string;
  /** Whether the engine was taken apart for it, coming from the baseline; `null`: told by the parts that changed. */
  takenApart: boolean | null;
  /** Pulls of it that are not to count; all others do. */
  leftOut: readonly string[];
}

export const EMPTY_ROW: TrialRow = { combinationId: '', shortName: '', takenApart: null, leftOut: [] };

/** Rows for pulls that were ticked before: one a combination, in the order ticked, the baseline first; at least two. */
export function firstRows(pulls: PullRow[], tickedIds: readonly string[]): TrialRow[] {
  const ticked = tickedIds.flatMap((id) => pulls.find((pull) => pull.id === id) ?? []);
  const combinationIds = [...new Set(ticked.flatMap((pull) => pull.combinationId ?? []))];
  const rows = combinationIds.map(
    (combinationId): TrialRow => ({
      combinationId,
      shortName: '',
      takenApart: null,
      leftOut: pulls
        .filter((pull) => pull.combinationId === combinationId && !tickedIds.includes(pull.id))
        .map((pull) => pull.id),
    }),
  );
  while (rows.length < 2) rows.push({ ...EMPTY_ROW, leftOut: [] });
  return rows;
}
