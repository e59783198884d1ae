import type { CorrectionId } from '@pullbook/core/air';
import { type Combination, needsTakingApart, whatChanged } from '@pullbook/core/combination';
import { type ComparedInput, compareCombinations } from '@pullbook/core/compare';
import { defaultRecipe, type Pull, viewPull } from '@pullbook/core/pull';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import { abortedCounted } from '@pullbook/core/trial';
import type { Book, PullHead } from '@pullbook/store';
import type { ShownBadge, ShownExplanation, ViewOptions } from '@pullbook/views';
import { type CompareReport, compareReport } from './edge/compare-report.ts';
import { type EdgeFinding, edgeFindings } from './edge/finding.ts';
import { findPull } from './find-named.ts';
import { findingsOfCompared } from './findings.ts';
import { scatterHistoryOf } from './scatter-history.ts';
import { settingsOf } from './settings.ts';
import { shopReadingOf } from './shop-reading.ts';
import { leftOutOfBand, type StatedScatter, withStated } from './stated-scatter.ts';
import { besideOf, whyOfCompared } from './why-of-compared.ts';

export interface PullsToCompare {
  /** Ids, beginnings of ids, or names. */
  baseline: string[];
  changed: string[];
  /** Missing: the shop's own. */
  correction?: CorrectionId | undefined;
  /** Window of the averages, r/min; `null`: the common window. */
  windowRpm: [low: number, high: number] | null;
  /** Scatter said by hand; missing: what the book knows of it. */
  scatter?: StatedScatter | undefined;
  /** Smallest gain that matters, share; missing: the shop's own. */
  worthwhile?: number | undefined;
  /** Engine speeds at which the gain is asked for, r/min. */
  atRpm?: readonly number[] | undefined;
  /** Units of the report's words; missing: SI. */
  wordsIn?: ViewOptions | undefined;
}

/** What the rules say of the comparison and its pulls beside the figures, why it came out so, and its badges. */
export type PullsCompared = CompareReport & {
  findings: EdgeFinding[];
  /** `null`: no gain, nothing to explain. */
  explanation: ShownExplanation | null;
  badges: ShownBadge[];
};

/** Compares pulls without a trial: what the changed ones gain over the baseline ones. Stores nothing. */
export async function comparePulls(book: Book, asked: PullsToCompare): Promise<Result<PullsCompared>> {
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
  const settings = await settingsOf(book);
  const recipe = defaultRecipe(asked.correction ?? settings.correction);
  const input = async (key: string, side: PullHead[]) => {
    const pulls = await book.pulls(side.map((one) => one.id));
    return {
      key,
      combinationId: side[0]?.combinationId ?? null,
      pulls: pulls.map((pull: Pull) => ({ pull, view: viewPull(pull, recipe, shop) })),
    } satisfies ComparedInput;
  };
  const inputs = [await input('A', baseline.value), await input('B', changed.value)];
  const heads = [...baseline.value, ...changed.value];
  const fitted = await combinationsOf(book, heads);
  const beside = await besideOf(book, inputs, fitted);
  const takenApart = isTakenApart(baseline.value, changed.value, fitted);
  const known = await scatterHistoryOf(book, {
    cells: heads.map(({ cell }) => cell),
    sheets: [...fitted.values()].map(({ sheet }) => sheet),
    without: heads.map(({ id }) => id),
  });
  const history = asked.scatter === undefined ? known : withStated(known, asked.scatter);
  const comparison = compareCombinations(inputs, {
    averagesWindowRpm: asked.windowRpm,
    cells: shop.cells,
    beside,
    history,
    keptOnTheBrake: takenApart === false ? ['B'] : [],
    worthwhile: asked.worthwhile ?? settings.worthwhileGain,
  });
  const views = inputs.flatMap((one) => one.pulls.map(({ view }) => view));
  const pulls = inputs.flatMap((one) => one.pulls.map(({ pull }) => pull));
  const leftOut = leftOutOfBand(history, pulls, takenApart === true);
  const aborted = pulls.flatMap(abortedCounted);
  const whole = { ...comparison, remarks: [...comparison.remarks, ...leftOut, ...aborted] };
  const words = asked.wordsIn ?? null;
  const findings = await findingsOfCompared(book, { comparison, inputs, combinations: fitted });
  const names = new Map<string, string>(pulls.map(({ id, name }) => [`pull ${id}`, name]));
  const report = compareReport(whole, 'B', views, words, asked.atRpm ?? []);
  const why = whyOfCompared(whole, inputs, beside, words);
  return accepted({ ...report, findings: edgeFindings(findings, words, names), ...why }, whole.remarks);
}

/** The combinations of the pulls that are known, by id. */
async function combinationsOf(
  book: Book,
  heads: readonly PullHead[],
): Promise<ReadonlyMap<string, Combination>> {
  const ids = [...new Set(heads.flatMap(({ combinationId }) => combinationId ?? []))];
  const found = await Promise.all(ids.map((id) => book.combination(id)));
  return new Map(found.flatMap((one) => (one === null ? [] : [[one.id, one] as const])));
}

/** Whether every pull has its set-up noted and no set-up stands on both sides. */
function setUpsApart(baseline: readonly PullHead[], changed: readonly PullHead[]): boolean {
  const [left, right] = [baseline, changed].map((side) => new Set(side.map(({ setUpId }) => setUpId)));
  return !left!.has(null) && !right!.has(null) && [...left!].every((id) => !right!.has(id));
}

/** Whether the engine was taken apart for the change; `null`: the sheets do not tell, which counts as taken apart. */
function isTakenApart(
  baseline: readonly PullHead[],
  changed: readonly PullHead[],
  fitted: ReadonlyMap<string, Combination>,
): boolean | null {
  const idOf = (side: readonly PullHead[]) => {
    const ids = new Set(side.map(({ combinationId }) => combinationId));
    return ids.size === 1 ? [...ids][0]! : null;
  };
  const [before, after] = [idOf(baseline), idOf(changed)];
  if (before === null || after === null) return null;
  // One combination against itself: fitted twice where both sides are noted as of set-ups of their own.
  if (before === after) return setUpsApart(baseline, changed);
  const [left, right] = [fitted.get(before), fitted.get(after)];
  if (left === undefined || right === undefined || left.engineId !== right.engineId) return null;
  const changes = whatChanged(left.sheet, right.sheet, []);
  return changes.length === 0 ? null : needsTakingApart(changes);
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
