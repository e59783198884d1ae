import type { Combination, PartChange } from '../combination/index.ts';
import type { Comparison } from '../compare/index.ts';
import { type Explanation, explainGain } from '../explain/index.ts';
import type { Pull } from '../pull/index.ts';
import type { MatchedSide, Trial } from './model.ts';

interface ToExplain {
  trial: Trial;
  comparison: Comparison | null;
  changes: Readonly<Record<string, PartChange[]>>;
  combinations: ReadonlyMap<string, Combination>;
  pulls: ReadonlyMap<string, Pull>;
  matched: ReadonlyMap<string, MatchedSide>;
}

/** Why each gain of the trial came out as it did. */
export function explanationsOf({
  trial,
  comparison,
  changes,
  combinations,
  pulls,
  matched,
}: ToExplain): Explanation[] {
  if (comparison === null) return [];
  const sheets = new Map(
    trial.combinations.flatMap(({ key, combinationId }) => {
      const sheet = combinations.get(combinationId)?.sheet;
      return sheet === undefined ? [] : [[key, sheet] as const];
    }),
  );
  return comparison.gains.map((gain) =>
    explainGain({
      comparison,
      gain,
      changes: changes[gain.changedKey] ?? null,
      sheets,
      pulls,
      lineRuns: matched.get(gain.changedKey)?.lineRuns ?? null,
    }),
  );
}
