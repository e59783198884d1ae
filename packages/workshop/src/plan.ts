import type { StopCriterion, TrialPlan } from '@pullbook/core/plan';
import { accepted, type Result } from '@pullbook/core/remark';
import type { Trial } from '@pullbook/core/trial';
import type { Book } from '@pullbook/store';
import type { ViewOptions } from '@pullbook/views';
import type { PlanReport } from './edge/plan-report.ts';
import { findTrial } from './find-named.ts';
import { onLatest } from './on-latest.ts';
import { planReport } from './plan-to-report.ts';
import { type PlanAsked, workedPlan } from './worked-plan.ts';

/** Plans the next pulls of a trial. Stores nothing. `options`: units of the words; `null`: SI. */
export async function planOf(
  book: Book,
  id: string,
  asked: PlanAsked,
  options: ViewOptions | null,
  now: Date = new Date(),
): Promise<Result<PlanReport>> {
  const found = await findTrial(book, id);
  if (!found.ok) return found;
  const worked = await workedPlan(book, found.value, asked, now);
  return worked.ok ? accepted(planReport(worked.value, options)) : worked;
}

/** Plans and keeps it with the trial: pulls made already are its first ones. */
export async function keepPlan(
  book: Book,
  id: string,
  asked: PlanAsked & { stopCriteria?: StopCriterion[] | null | undefined; notes?: string | undefined },
  stamp?: string,
  now: Date = new Date(),
): Promise<Result<{ id: string }>> {
  return changePlan(book, id, stamp, 'plan kept', async (trial) => {
    const worked = await workedPlan(book, trial, asked, now);
    if (!worked.ok) return worked;
    const { plan, basis, gainRatio, odds } = worked.value;
    const kept: TrialPlan = {
      gainRatio,
      odds,
      pulls: [...basis.made, ...plan.pulls].map(({ key }) => ({ key })),
      looksAt: plan.looksAt,
      stopCriteria:
        asked.stopCriteria === undefined ? (trial.plan?.stopCriteria ?? null) : asked.stopCriteria,
      notes: asked.notes ?? trial.plan?.notes ?? '',
    };
    return accepted(kept);
  });
}

/** Takes the plan off the trial; undone like every act. */
export function forgetPlan(book: Book, id: string, stamp?: string): Promise<Result<{ id: string }>> {
  return changePlan(book, id, stamp, 'plan forgotten', async () => accepted(null));
}

async function changePlan(
  book: Book,
  id: string,
  stamp: string | undefined,
  reason: string,
  planned: (trial: Trial) => Promise<Result<TrialPlan | null>>,
): Promise<Result<{ id: string }>> {
  const found = await findTrial(book, id);
  if (!found.ok) return found;
  return onLatest(book, `trial ${found.value.id}`, stamp, async (latest) => {
    const trial = (await book.trial(found.value.id)) ?? found.value;
    const plan = await planned(trial);
    if (!plan.ok) return plan;
    await book.changeTrial({ ...trial, plan: plan.value }, reason, latest);
    return accepted({ id: trial.id });
  });
}
