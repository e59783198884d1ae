import { median } from '@pullbook/core/numeric';
import { countsByKey, pullsLeft } from '@pullbook/core/plan';
import { accepted, type Result } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import {
  type Paper,
  type PlanPage,
  type PlanPageInput,
  planPage,
  pullSheet,
  pullSheetHtml,
  type ViewOptions,
} from '@pullbook/views';
import { findTrial } from './find-named.ts';
import { engineOfPlan } from './plan-engine.ts';
import { riskOf } from './plan-guard.ts';
import { type PlanAsked, planRemarks, type WorkedPlan, workedPlan } from './worked-plan.ts';

/** The plan of a trial as the page shows it. `stamp`: what keeping it gives back. Stores nothing. */
export async function planPageOf(
  book: Book,
  id: string,
  asked: PlanAsked,
  options: ViewOptions,
  now: Date = new Date(),
): Promise<Result<PlanPage & { stamp: string }>> {
  const found = await findTrial(book, id);
  if (!found.ok) return found;
  // The stamp before the thing, as on the trial's page.
  const stamp = await book.stamp(`trial ${found.value.id}`);
  const trial = (await book.trial(found.value.id)) ?? found.value;
  const worked = await workedPlan(book, trial, asked, now);
  return worked.ok ? accepted({ ...planPage(inputOf(worked.value), options), stamp }) : worked;
}

/**
 * The pull sheet as one HTML file: of the plan that is kept, where nothing else is asked for, else of the plan made now.
 */
export async function pullSheetOf(
  book: Book,
  id: string,
  asked: PlanAsked,
  options: ViewOptions,
  paper: Paper = options.units === 'us' ? 'letter' : 'a4',
  now: Date = new Date(),
): Promise<Result<{ html: string; pulls: number }>> {
  const found = await findTrial(book, id);
  if (!found.ok) return found;
  const worked = await workedPlan(book, found.value, asked, now);
  if (!worked.ok) return worked;
  const { plan, basis } = worked.value;
  const kept = basis.trial.plan ?? null;
  const counted = countsByKey(basis.made);
  const isKept = kept !== null && Object.values(asked).every((one) => one === undefined);
  const pulls = isKept
    ? pullsLeft(kept, counted)
    : plan.pulls.map(({ key }, place) => ({ order: basis.made.length + place + 1, key }));
  const sheet = pullSheet(inputOf(worked.value), pulls, options);
  return accepted({ html: pullSheetHtml(sheet, paper), pulls: pulls.length });
}

function inputOf(worked: WorkedPlan): PlanPageInput {
  const { plan, gainRatio, odds, basis } = worked;
  const { trial, answer } = basis;
  const rates = [...answer.views.values()].flatMap(({ window }) => window?.sweepRateRpmPerS ?? []);
  return {
    trial,
    plan,
    gainRatio,
    odds,
    combinations: basis.combinations.map((one, place) => ({
      ...one,
      sheet: answer.combinations.get(trial.combinations[place]!.combinationId)?.sheet ?? null,
    })),
    made: basis.made,
    history: basis.history,
    engine: engineOfPlan(answer),
    baselinePower: basis.baselinePower,
    windowRpm: trial.averagesWindowRpm ?? answer.comparison?.commonWindowRpm ?? null,
    sweepRateRpmPerS: rates.length === 0 ? null : median(rates),
    risk: riskOf(basis),
    remarks: planRemarks(plan, odds),
  };
}
