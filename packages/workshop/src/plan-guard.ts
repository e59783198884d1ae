import { baselineGuard, countsByKey, pullsLeft } from '@pullbook/core/plan';
import type { Remark } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import { PACE, type PlanBasis, planBasis, USUAL_ODDS } from './plan-question.ts';

/** A trial that would lose its baseline. */
export interface BaselineRisk {
  trialId: string;
  question: string;
  /** What is on the brake. */
  combinationId: string;
  remark: Remark;
}

/**
 * What would be lost in the trials of the book if what is on the brake now leaves it: one remark a trial whose baseline it is.
 * `fitted`: only where this combination is on the brake.
 */
export async function baselinesAtRisk(
  book: Book,
  fitted?: string | undefined,
  now: Date = new Date(),
): Promise<BaselineRisk[]> {
  const newest = await book.newestPull();
  if (newest === null || newest.combinationId === null) return [];
  if (fitted !== undefined && newest.combinationId !== fitted) return [];
  const found: BaselineRisk[] = [];
  const { combinationId } = newest;
  for (const trial of await book.trials()) {
    const isBaseline = trial.combinations[0]?.combinationId === newest.combinationId;
    if (trial.kind === 'survey' || !isBaseline) continue;
    const risk = riskOf(await planBasis(book, trial, now));
    if (risk !== null)
      found.push({ trialId: trial.id, question: trial.question, combinationId, remark: risk });
  }
  return found;
}

/** The same, said where pulls of a combination are about to be stored that is another one than stands on the brake. */
export async function baselineLeaving(book: Book, next: string | null | undefined): Promise<Remark[]> {
  if (next == null || (await book.newestPull())?.combinationId === next) return [];
  return (await baselinesAtRisk(book)).map((risk) => risk.remark);
}

/**
 * What is lost if the baseline of a trial leaves the brake now; `null`: nothing, as where the kept plan has it leave now and
 * come back.
 */
export function riskOf({
  trial,
  history,
  worthwhile,
  combinations,
  made,
  onTheBrake,
  baselinePower,
}: PlanBasis): Remark | null {
  if (onTheBrake === null) return null;
  const baseline = combinations[0]!.key;
  const [next, ...later] = trial.plan == null ? [] : pullsLeft(trial.plan, countsByKey(made));
  if (next !== undefined && next.key !== baseline && later.some(({ key }) => key === baseline)) return null;
  const guarded = baselineGuard({
    history,
    combinations,
    made,
    onTheBrake,
    planned: trial.plan == null ? null : countsByKey(trial.plan.pulls),
    gainRatio: trial.plan?.gainRatio ?? worthwhile,
    odds: trial.plan?.odds ?? USUAL_ODDS,
    pace: PACE,
    baselinePower,
  });
  return guarded?.remark ?? null;
}
