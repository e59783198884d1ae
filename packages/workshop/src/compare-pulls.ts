import type { CorrectionId } from '@pullbook/core/air';
import { type ComparedInput, compareCombinations } from '@pullbook/core/compare';
import { defaultRecipe, type Pull, viewPull } from '@pullbook/core/pull';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import type { Book, PullHead } from '@pullbook/store';
import type { ViewOptions } from '@pullbook/views';
import { type CompareReport, compareReport } from './edge/compare-report.ts';
import { findPull } from './find-named.ts';
import { settingsOf } from './settings.ts';
import { shopReadingOf } from './shop-reading.ts';

export interface PullsToCompare {
  /** Ids, beginnings of ids, or names. */
  baseline: string[];
  changed: string[];
  /** Missing: the shop's own. */
  correction?: CorrectionId | undefined;
  /** Window of the averages, r/min; `null`: the common window. */
  windowRpm: [low: number, high: number] | null;
  /** Units of the report's words; missing: SI. */
  wordsIn?: ViewOptions | undefined;
}

/** Compares pulls without a trial: what the changed ones gain over the baseline ones. Stores nothing. */
export async function comparePulls(book: Book, asked: PullsToCompare): Promise<Result<CompareReport>> {
  const baseline = await allOf(book, asked.baseline, 'baseline');
  const changed = await allOf(book, asked.changed, 'changed');
  if (!baseline.ok || !changed.ok) {
    return refused(...([...baseline.remarks, ...changed.remarks] as [Remark, ...Remark[]]));
  }
  const both = baseline.value.find((one) => changed.value.some((other) => other.id === one.id));
  if (both) {
    return refused(
      remark(
        'refusal',
        'pull-on-both-sides',
        `"${both.name}" is named as baseline and as changed. A pull can only stand on one side.`,
      ),
    );
  }
  const shop = await shopReadingOf(book);
  const recipe = defaultRecipe(asked.correction ?? (await settingsOf(book)).correction);
  const input = async (key: string, side: { id: string; combinationId: string | null }[]) => {
    const pulls = await book.pulls(side.map((one) => one.id));
    return {
      key,
      combinationId: side[0]?.combinationId ?? null,
      pulls: pulls.map((pull: Pull) => ({ pull, view: viewPull(pull, recipe, shop) })),
    } satisfies ComparedInput;
  };
  const inputs = [await input('A', baseline.value), await input('B', changed.value)];
  const comparison = compareCombinations(inputs, {
    averagesWindowRpm: asked.windowRpm,
    cells: shop.cells,
  });
  const views = inputs.flatMap((one) => one.pulls.map(({ view }) => view));
  return accepted(compareReport(comparison, 'B', views, asked.wordsIn ?? null), comparison.remarks);
}

async function allOf(book: Book, given: string[], side: string): Promise<Result<PullHead[]>> {
  if (given.length === 0) {
    return refused(remark('refusal', 'no-pulls-named', `No ${side} pull is named: give at least one id.`));
  }
  const found = await Promise.all(given.map((one) => findPull(book, one)));
  const failed = found.flatMap((one) => (one.ok ? [] : one.remarks));
  if (failed.length > 0) return refused(...(failed as [Remark, ...Remark[]]));
  const values = found.flatMap((one) => (one.ok ? [one.value] : []));
  return accepted([...new Map(values.map((one) => [one.id, one])).values()]);
}
