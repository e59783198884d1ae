import { type PullPlan, pullsLeft, type StopCriterion, type TrialPlan } from '@pullbook/core/plan';
import type { EdgeRemark } from './remark.ts';

/** A plan as it leaves the program: kW, per cent of the baseline's mean power; `null` unknown. */
export interface PlanReport {
  schemaVersion: 1;
  trialId: string;
  question: string;
  baseline: string;
  /** Mean power of the baseline's counted pulls. */
  baselineKw: number | null;
  gainPercent: number;
  gainKw: number | null;
  odds: number;
  /** Whether the gain is seen with these odds; if not, the order that comes nearest is given with its own. */
  reaches: boolean;
  oddsReached: number;
  order: PullPlan['order'];
  /** Still to make, in their order. */
  pulls: {
    order: number;
    combination: string;
    shortName: string;
    combinationId: string;
    /** Whether the engine is taken apart before it. */
    takenApartBefore: boolean;
  }[];
  stays: {
    combination: string;
    shortName: string;
    pulls: number;
    takenApart: boolean;
    warmUps: number;
    waitMinutes: number | null;
  }[];
  smallestDifferencePercent: number | null;
  smallestDifferenceKw: number | null;
  /** What no further pulls in these set-ups can get below. */
  floorPercent: number | null;
  /** Counted pulls, those made among them, after which the verdict is looked at: the looks share the error. */
  looksAt: number[];
  hours: number;
  whatIsMade: Seen & { pulls: { combination: string; counted: number }[] };
  /** After one more pull of it. */
  oneMore: (Seen & { combination: string })[];
  curve: { pullsOfEach: number; smallestDifferencePercent: number | null }[];
  /** What a counted pull starts from. */
  start: { oil: string; coolant: string; alike: string; source: string };
  stopCriteria: StopCriterion[];
  /** Stands over the card. */
  planningAid: string;
  cautions: string[];
  /** One standard deviation, per cent. */
  scatter: {
    pullPercent: number;
    setUpPercent: number;
    dayPercent: number;
    driftPercentPerHour: number;
    from: string;
  };
  /** What is lost if the baseline leaves the brake now; `null`: nothing. */
  baselineAtRisk: string | null;
  kept: KeptPlan | null;
  remarks: EdgeRemark[];
}

export interface Seen {
  smallestDifferencePercent: number | null;
  smallestDifferenceKw: number | null;
}

/** The plan that is kept with the trial, and how far it is. */
export interface KeptPlan {
  gainPercent: number;
  odds: number;
  looksAt: number[];
  notes: string;
  hasOwnStopCriteria: boolean;
  pulls: { combination: string; planned: number; counted: number }[];
  /** Planned and not made yet, each with its number in the plan. */
  left: { order: number; combination: string }[];
}

/** How far a kept plan is. */
export function keptPlan(
  { gainRatio, odds, pulls, looksAt, notes, stopCriteria }: TrialPlan,
  counted: ReadonlyMap<string, number>,
): KeptPlan {
  const keys = [...new Set(pulls.map(({ key }) => key))];
  return {
    gainPercent: 100 * gainRatio,
    odds,
    looksAt,
    notes,
    hasOwnStopCriteria: stopCriteria !== null,
    pulls: keys.map((key) => ({
      combination: key,
      planned: pulls.filter((one) => one.key === key).length,
      counted: counted.get(key) ?? 0,
    })),
    left: pullsLeft({ pulls }, counted).map(({ key, order }) => ({ order, combination: key })),
  };
}
