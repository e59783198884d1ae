import { solveMatch } from '@pullbook/core/airpath';
import { isSupercharged } from '@pullbook/core/combination';
import { lineRunsAtTheTop } from '@pullbook/core/explain';
import type { MatchedSide, Trial } from '@pullbook/core/trial';
import type { Book } from '@pullbook/store';
import { matchOfTrial } from './match-bundle.ts';

/**
 * What the supercharger matches of a trial say to its rules and reasons, by key: how the speed line runs, and boost against the
 * fitted match. Where a map was not measured its slope is a guess, and nothing is said of it. A trial without a supercharger
 * has none, and no match is made for it.
 */
export async function matchedSides(book: Book, trial: Trial): Promise<Map<string, MatchedSide>> {
  const built = await Promise.all(trial.combinations.map((one) => book.combination(one.combinationId)));
  if (!built.some((one) => one !== null && isSupercharged(one.sheet))) return new Map();
  const bundle = await matchOfTrial(book, trial.id);
  if (!bundle.ok) return new Map();
  return new Map(
    bundle.value.combinations.map(({ key, input, fit }) => {
      const isMeasured = input.compressor.map.form === 'points';
      const lineRuns = isMeasured ? lineRunsAtTheTop(solveMatch(input)) : null;
      return [key, { lineRuns, fit: fit === null ? null : { residuals: fit.residuals } }];
    }),
  );
}
