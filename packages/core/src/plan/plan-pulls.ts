import type { ScatterHistory } from '../scatter/index.ts';
import { type CandidateOrder, candidateOrders, type OrderName, type Stay } from './candidate-orders.ts';
import { countsByKey, type DesignedPull } from './designed-pull.ts';
import { judgeDesign } from './judge-design.ts';
import { laidOut, type OnTheBrake, type Pace } from './laid-out.ts';
import { looksOf } from './looks.ts';

export interface PlanQuestion {
  history: ScatterHistory;
  /** The baseline first. `takenApart`: the engine is, coming from the baseline. */
  combinations: readonly { key: string; takenApart: boolean }[];
  /** Gain that is to be seen, share of the baseline's mean power, and the chance to see it. */
  gainRatio: number;
  odds: number;
  /** Counted pulls made already. */
  made: readonly DesignedPull[];
  /** `null`: nothing is fitted, or nobody knows. */
  onTheBrake: OnTheBrake | null;
  /** How often the verdict is looked at, 1 to 3: looks share the error. */
  looks: number;
  pace: Pace;
  /** Most pulls still to make. */
  maximumPulls: number;
}

/** Pulls of one combination one after another, as a person does them. */
export interface PlannedStay extends Stay {
  /** Whether the engine is taken apart before it. */
  takenApart: boolean;
}

export interface PullPlan {
  order: OrderName;
  stays: PlannedStay[];
  /** Still to make, in their order. */
  pulls: DesignedPull[];
  /** Whether the gain is seen with the odds asked for. If not, this is the order that comes nearest. */
  reaches: boolean;
  /** Chance to see the gain with this plan. */
  oddsReached: number;
  /** Share of the baseline; with the odds asked for. */
  smallestDifference: number;
  /** What no number of further pulls in these set-ups can get below. */
  floor: number;
  /** Counted pulls, those made already among them. */
  looksAt: number[];
  hours: number;
  /** What is seen with what was made; `null`: nothing can be compared yet. */
  made: number | null;
  /** The same after one more pull of each, where it is on the brake or was pulled before. */
  oneMore: { key: string; smallestDifference: number | null }[];
  /** Smallest difference against the number of pulls of each, in the same order. */
  curve: { pullsOfEach: number; smallestDifference: number }[];
}

/** The floor is that of pulls without scatter of their own: this share of it is left, so that the sums stay solvable. */
const NEXT_TO_NONE = 1e-3;
const CURVE_TO = 8;
/** Floors below this are none: what is left is the scatter that was left. */
const NO_FLOOR = 1e-4;
/** Odds for which nobody makes another pull. */
const NEXT_TO_NOTHING = 0.03;

/**
 * Which pulls to make, and in which order, so that a gain of that size comes out clear with these odds in the least time:
 * taking the engine apart costs hours, a pull minutes. Power by the noncentral t with the spreads of the history and the
 * degrees of freedom that the repeats add; 95 %, two-sided. `null`: nothing can be planned within the most pulls.
 */
export function planPulls(question: PlanQuestion): PullPlan | null {
  const worked = workedQuestion(question);
  const best = bestOrder(worked);
  if (best === null) return null;
  const { order, pulls, judged, looksAt, hours } = best;
  const without = { ...worked, history: withoutPullScatter(question.history) };
  const floor = judgeDesign([...question.made, ...pulls], [1], without)!.smallest();
  return {
    order: order.name,
    stays: staysOf(order.stays, worked),
    pulls,
    reaches: judged.odds >= question.odds,
    oddsReached: judged.odds,
    smallestDifference: judged.smallest(),
    floor: floor < NO_FLOOR ? 0 : floor,
    looksAt,
    hours,
    made: judgeDesign(question.made, [1], worked)?.smallest() ?? null,
    oneMore: question.combinations.map(({ key }) => ({ key, smallestDifference: withOneMore(key, worked) })),
    curve: curveOf(order, worked),
  };
}

interface Worked extends PlanQuestion {
  baseline: string;
  start: OnTheBrake;
  takenApart: ReadonlySet<string>;
}

function workedQuestion(question: PlanQuestion): Worked {
  const baseline = question.combinations[0]!.key;
  return {
    ...question,
    baseline,
    start: question.onTheBrake ?? {
      key: baseline,
      setUp: 'planned set-up 0',
      session: 'planned',
      cell: question.made.at(-1)?.cell ?? null,
      hours: 0,
    },
    takenApart: new Set(question.combinations.flatMap(({ key, takenApart }) => (takenApart ? [key] : []))),
  };
}

interface Weighed {
  order: CandidateOrder;
  pulls: DesignedPull[];
  judged: NonNullable<ReturnType<typeof judgeDesign>>;
  looksAt: number[];
  hours: number;
}

function bestOrder(worked: Worked): Weighed | null {
  const orders = candidateOrders({
    keys: worked.combinations.map(({ key }) => key),
    onTheBrake: worked.onTheBrake?.key ?? null,
    made: countsByKey(worked.made),
    inTurn: worked.takenApart.size === 0,
    maximumPulls: worked.maximumPulls,
  });
  const byHours = orders
    .map((order) => ({ order, ...laid(order.stays, worked) }))
    .toSorted((one, other) => one.hours - other.hours);
  // Judged at a single look first, which is quick and never too low: only what passes is judged with all of them.
  const passed: { one: (typeof byHours)[number]; odds: number }[] = [];
  for (const one of byHours) {
    const all = [...worked.made, ...one.pulls];
    const judged = judgeDesign(all, [all.length], worked);
    if (judged === null) continue;
    passed.push({ one, odds: judged.odds });
    if (judged.odds < worked.odds) continue;
    const weighed = withLooks(one, worked);
    if (weighed.judged.odds >= worked.odds) return weighed;
  }
  // None gets there: hours and pulls that buy next to nothing are not asked for.
  const most = Math.max(...passed.map(({ odds }) => odds));
  const nearest = passed.find(({ odds }) => odds >= most - NEXT_TO_NOTHING);
  return nearest === undefined ? null : withLooks(nearest.one, worked);
}

function withLooks(one: Pick<Weighed, 'order' | 'pulls' | 'hours'>, worked: Worked): Weighed {
  const all = [...worked.made, ...one.pulls];
  // What is made was looked at already: only a look that is still to come can be planned.
  const looksAt = looksOf(
    all.map(({ key }) => key),
    worked.looks,
  ).filter((at) => at > worked.made.length);
  return { ...one, looksAt, judged: judgeDesign(all, looksAt, worked)! };
}

const laid = (stays: readonly Stay[], { start, takenApart, pace }: Worked) =>
  laidOut(stays, start, takenApart, pace);

function staysOf(stays: readonly Stay[], { start, takenApart, onTheBrake }: Worked): PlannedStay[] {
  return stays.map((stay, place) => {
    const before = stays[place - 1]?.key ?? (onTheBrake === null ? stay.key : start.key);
    return {
      ...stay,
      takenApart: before !== stay.key && (takenApart.has(stay.key) || takenApart.has(before)),
    };
  });
}

/** One more pull of it where it stands; in a new set-up where something else is on the brake. */
function withOneMore(key: string, worked: Worked): number | null {
  const { pulls } = laid([{ key, count: 1 }], worked);
  return judgeDesign([...worked.made, ...pulls], [1], worked)?.smallest() ?? null;
}

function curveOf({ stays }: CandidateOrder, worked: Worked): PullPlan['curve'] {
  const places = new Map<string, number>();
  for (const { key } of stays) places.set(key, (places.get(key) ?? 0) + 1);
  const made = countsByKey(worked.made);
  return Array.from({ length: CURVE_TO }, (_, each) => each + 1).flatMap((pullsOfEach) => {
    const left = new Map([...places].map(([key]) => [key, Math.max(0, pullsOfEach - (made.get(key) ?? 0))]));
    const spread = stays.map(({ key }, place) => {
      const later = stays.slice(place).filter((stay) => stay.key === key).length;
      const count = Math.floor(left.get(key)! / later);
      left.set(key, left.get(key)! - count);
      return { key, count };
    });
    const { pulls } = laid(spread, worked);
    const judged = judgeDesign([...worked.made, ...pulls], [1], worked);
    return judged === null ? [] : [{ pullsOfEach, smallestDifference: judged.smallest() }];
  });
}

const withoutPullScatter = (history: ScatterHistory): ScatterHistory => ({
  ...history,
  pull: { ...history.pull, sigma: history.pull.sigma * NEXT_TO_NONE },
});
