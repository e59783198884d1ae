import { isSupercharged } from '@pullbook/core/combination';
import { beforeThePull, cautionsOf, countsByKey, PLANNING_AID } from '@pullbook/core/plan';
import { fromInside, writeSaid } from '@pullbook/core/quantity';
import type { Said } from '@pullbook/core/remark';
import { stopLines, type ViewOptions } from '@pullbook/views';
import { edgeNumber } from './edge/number.ts';
import { keptPlan, type PlanReport } from './edge/plan-report.ts';
import { edgeRemarks, wordsOf } from './edge/remark.ts';
import { engineOfPlan } from './plan-engine.ts';
import { riskOf } from './plan-guard.ts';
import type { PlanBasis } from './plan-question.ts';
import { planRemarks, type WorkedPlan } from './worked-plan.ts';

/** A plan for the command line. `options`: units of its words; `null`: SI. */
export function planReport(
  { basis, plan, gainRatio, odds }: WorkedPlan,
  options: ViewOptions | null,
): PlanReport {
  const { trial, answer, history, combinations, made, baselinePower } = basis;
  const write = ({ text, parts }: Said) => (options === null ? text : writeSaid(text, parts, options));
  const nameOf = (key: string) => combinations.find((one) => one.key === key)!.name;
  const engine = engineOfPlan(answer);
  const counted = countsByKey(made);
  const seen = (ratio: number | null) => ({
    smallestDifferencePercent: ratio === null ? null : percent(ratio),
    smallestDifferenceKw: ratio === null ? null : kilowatts(ratio, baselinePower),
  });
  const before = beforeThePull(engine.isBoosted, true);
  const firstOf = plan.stays.map((_, place) =>
    plan.stays.slice(0, place).reduce((sum, one) => sum + one.count, 0),
  );
  const risk = riskOf(basis);
  return {
    schemaVersion: 1,
    trialId: trial.id,
    question: trial.question,
    baseline: combinations[0]!.key,
    baselineKw: baselinePower === null ? null : edgeNumber(fromInside(baselinePower, 'kW', 'power')),
    gainPercent: 100 * gainRatio,
    gainKw: kilowatts(gainRatio, baselinePower),
    odds,
    reaches: plan.reaches,
    oddsReached: plan.oddsReached,
    order: plan.order,
    pulls: plan.pulls.map(({ key }, place) => ({
      order: place + 1,
      combination: key,
      shortName: nameOf(key),
      combinationId: trial.combinations.find((one) => one.key === key)!.combinationId,
      takenApartBefore: plan.stays[firstOf.indexOf(place)]?.takenApart ?? false,
    })),
    stays: plan.stays.map(({ key, count, takenApart }, place) => {
      const { warmUps, waitMinutes } = beforeThePull(isBoosted(key, basis), place === 0);
      return { combination: key, shortName: nameOf(key), pulls: count, takenApart, warmUps, waitMinutes };
    }),
    ...seen(plan.smallestDifference),
    floorPercent: percent(plan.floor),
    looksAt: plan.looksAt,
    hours: plan.hours,
    whatIsMade: {
      pulls: combinations.map(({ key }) => ({ combination: key, counted: counted.get(key) ?? 0 })),
      ...seen(plan.made),
    },
    oneMore: plan.oneMore.map((one) => ({ combination: one.key, ...seen(one.smallestDifference) })),
    curve: plan.curve.map((one) => ({
      pullsOfEach: one.pullsOfEach,
      smallestDifferencePercent: percent(one.smallestDifference),
    })),
    start: {
      oil: write(before.oil),
      coolant: write(before.coolant),
      alike: write(before.alike),
      source: before.source,
    },
    stopCriteria: stopLines(trial, engine, options),
    planningAid: PLANNING_AID,
    cautions: cautionsOf(engine),
    scatter: {
      pullPercent: 100 * history.pull.sigma,
      setUpPercent: 100 * history.setUp.sigma,
      dayPercent: 100 * history.day.sigma,
      driftPercentPerHour: 100 * history.driftPerHour.sigma,
      from: history.pull.from,
    },
    baselineAtRisk: risk === null ? null : wordsOf(risk, options),
    kept: trial.plan == null ? null : keptPlan(trial.plan, counted),
    remarks: edgeRemarks(planRemarks(plan, odds), null, options),
  };
}

function isBoosted(key: string, { trial, answer }: PlanBasis): boolean {
  const id = trial.combinations.find((one) => one.key === key)!.combinationId;
  const sheet = answer.combinations.get(id)?.sheet;
  return sheet !== undefined && isSupercharged(sheet);
}

const percent = (ratio: number): number | null => edgeNumber(100 * ratio);

const kilowatts = (ratio: number, power: number | null): number | null =>
  power === null ? null : edgeNumber(fromInside(ratio * power, 'kW', 'power'));
