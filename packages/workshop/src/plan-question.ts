import { type ComparedInput, HOURS_A_PULL, pullArraysOf } from '@pullbook/core/compare';
import type { DesignedPull, OnTheBrake, Pace, PlanQuestion } from '@pullbook/core/plan';
import type { ScatterHistory } from '@pullbook/core/scatter';
import { keptOnTheBrake, type Trial, type TrialAnswer } from '@pullbook/core/trial';
import type { Book, PullHead } from '@pullbook/store';
import { scatterHistoryOf } from './scatter-history.ts';
import { settingsOf } from './settings.ts';
import { answerOf } from './trial-answer.ts';

/** Hours to take an engine apart and together again. Common practice, no source. */
export const PACE: Pace = { minutesPerPull: 60 * HOURS_A_PULL, hoursTakenApart: 3, hoursKept: 0.25 };

/** Chance to see a gain that is planned for where nobody says. */
export const USUAL_ODDS = 0.8;

const HOUR = 3.6e6;

/** A trial's pulls as a plan sees them. */
export interface PlanBasis {
  trial: Trial;
  answer: TrialAnswer;
  history: ScatterHistory;
  /** Smallest gain that matters to the shop, share. */
  worthwhile: number;
  /** The baseline first. */
  combinations: (PlanQuestion['combinations'][number] & { name: string })[];
  /** Counted pulls made, in the order of the comparison. */
  made: DesignedPull[];
  onTheBrake: OnTheBrake | null;
  /** Mean power of the baseline over the averages' window, W; `null` unknown. */
  baselinePower: number | null;
}

/** What a plan of a trial rests on: its counted pulls, what stands on the brake now, and the scatter known of such pulls. */
export async function planBasis(book: Book, trial: Trial, now: Date): Promise<PlanBasis> {
  const answer = await answerOf(book, trial);
  const kept = new Set(keptOnTheBrake(trial, answer.changes));
  const made = madePulls(answer, [...kept]);
  const baseline = trial.combinations[0]!.key;
  const newest = await newestOnBrake(book, trial);
  const averages = answer.comparison?.combinations.find(({ key }) => key === baseline)?.averages;
  return {
    trial,
    answer,
    history: await historyOf(book, answer),
    worthwhile: (await settingsOf(book)).worthwhileGain,
    combinations: trial.combinations.map(({ key, shortName }) => ({
      key,
      name: shortName,
      takenApart: key !== baseline && !kept.has(key),
    })),
    made,
    onTheBrake: newest === null ? null : standing(newest, trial, made, now),
    baselinePower: averages?.get('power') ?? null,
  };
}

/**
 * The pull that was added last, for what is on the brake. Where that is only a summary, remembered or printed, the trial's last
 * measured one.
 */
async function newestOnBrake(book: Book, { combinations }: Trial): Promise<PullHead | null> {
  const newest = await book.newestPull();
  if (newest === null || newest.form === 'curve') return newest;
  const own = await book.pullHeadsWith(combinations.map(({ combinationId }) => combinationId));
  return own.find(({ form }) => form === 'curve') ?? null;
}

function madePulls(answer: TrialAnswer, kept: readonly string[]): DesignedPull[] {
  const { comparison, trial, pulls, views } = answer;
  if (comparison === null) return [];
  const inputs: ComparedInput[] = comparison.combinations.map(({ key, combinationId, pullIds }) => ({
    key,
    combinationId,
    pulls: pullIds.map((id) => ({ pull: pulls.get(id)!, view: views.get(id)! })),
  }));
  const arrays = pullArraysOf(inputs, comparison.combinations, comparison.engineSpeedRpm, {
    baselineKey: trial.combinations[0]!.key,
    keptOnTheBrake: kept,
  });
  return arrays.pulls.map(({ group, setUp, session, cell, hours }) => ({
    key: group,
    setUp,
    session,
    cell,
    hours,
  }));
}

/** What the newest pull of the book says is fitted; `null`: none of this trial's combinations. */
function standing(
  newest: PullHead,
  { combinations }: Trial,
  made: readonly DesignedPull[],
  now: Date,
): OnTheBrake | null {
  const key = combinations.find((one) => one.combinationId === newest.combinationId)?.key;
  if (key === undefined) return null;
  const last = made
    .filter((one) => one.key === key)
    .toSorted((one, other) => (one.hours ?? 0) - (other.hours ?? 0))
    .at(-1);
  const setUp = newest.setUpId ?? last?.setUp ?? null;
  const at = newest.recordedAt === null ? Number.NaN : Date.parse(newest.recordedAt);
  const isToday = newest.recordedAt?.slice(0, 10) === dayOf(now);
  if (last === undefined || !isToday) {
    return { key, setUp, session: 'planned', cell: newest.cell, hours: 0 };
  }
  const next = Number.isFinite(at) && last.hours !== null ? at / HOUR + PACE.minutesPerPull / 60 : null;
  return { key, setUp: last.setUp ?? setUp, session: last.session, cell: newest.cell, hours: next };
}

/** The day here, as loggers write it. */
function dayOf(now: Date): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/**
 * The scatter of such pulls, with what the repeats at hand said of that between pulls already in it: their degrees of freedom
 * are left out, since the design counts them again.
 */
async function historyOf(book: Book, answer: TrialAnswer): Promise<ScatterHistory> {
  const heads = [...answer.pulls.values()];
  const history = await scatterHistoryOf(book, {
    cells: heads.map(({ cell }) => cell),
    sheets: [...answer.combinations.values()].map(({ sheet }) => sheet),
    without: heads.map(({ id }) => id),
  });
  const used = answer.comparison?.gains.find(({ band }) => band !== null)?.band?.scatter.spreads.pull;
  if (used === undefined) return history;
  const degreesOfFreedom = Math.max(0, used.degreesOfFreedom - (used.fromRepeats?.degreesOfFreedom ?? 0));
  return { ...history, pull: { sigma: used.sigma, degreesOfFreedom, from: used.from } };
}
