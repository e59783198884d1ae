import type { Pull } from '../pull/index.ts';
import type { PullArray } from '../scatter/index.ts';
import type { ComparedCombination, ComparedInput } from './model.ts';

/** Time from one pull of a session to the next where nothing else is known, hours (common practice, no source). */
export const HOURS_A_PULL = 0.25;
const MILLISECONDS_AN_HOUR = 3.6e6;

export interface PullArrays {
  pulls: PullArray[];
  /** Pulls whose place in the session stands for their time. */
  timedByOrder: string[];
}

/**
 * Counted pulls with a power curve as the scatter room takes them, on the nodes of the comparison. A session is a day in a
 * cell. Combinations that were changed without taking the engine apart share the set-up of the baseline's pull nearest in time
 * on that day.
 */
export function pullArraysOf(
  inputs: readonly ComparedInput[],
  combinations: readonly ComparedCombination[],
  nodesRpm: Float64Array,
  { baselineKey, keptOnTheBrake }: { baselineKey: string | null; keptOnTheBrake: readonly string[] },
): PullArrays {
  const sessionOf = sessionsOf(inputs.flatMap((input) => input.pulls.map(({ pull }) => pull)));
  const entries = inputs.flatMap((input, place) =>
    (combinations[place]!.channels.get('power')?.pulls ?? []).flatMap(({ pullId, values }) => {
      const pull = input.pulls.find((entry) => entry.pull.id === pullId)!.pull;
      return [{ key: input.key, pull, power: values, session: sessionOf(pull) }];
    }),
  );
  const { hours, timedByOrder } = hoursOf(entries);
  const timed = entries.map((entry, place) => ({ ...entry, hours: hours[place]! }));
  const ofBaseline = timed.filter(({ key }) => key === baselineKey);
  const pulls = timed.map((entry): PullArray => {
    const { key, session } = entry;
    const there = ofBaseline.filter((one) => one.session === session);
    const shares = key === baselineKey || keptOnTheBrake.includes(key);
    const own = shares && there.length > 0 ? nearest(there, entry) : entry;
    return {
      engineSpeedRpm: nodesRpm,
      power: entry.power,
      group: key,
      setUp: own.pull.setUpId ?? (shares && there.length > 0 ? JSON.stringify([baselineKey, session]) : null),
      session,
      cell: entry.pull.cell,
      hours: entry.hours,
    };
  });
  return { pulls, timedByOrder };
}

type Timed = { key: string; pull: Pull; session: string | null; hours: number | null };

/** A pull of the baseline is its own nearest. */
function nearest<T extends Timed>(there: readonly T[], to: T): T {
  if (there.includes(to)) return to;
  const away = ({ hours }: T) =>
    hours === null || to.hours === null ? Number.POSITIVE_INFINITY : Math.abs(hours - to.hours);
  return there.reduce((best, other) => (away(other) < away(best) ? other : best));
}

/** Day and cell; of a pull without its time the day of its session's other pulls, else the session itself. */
function sessionsOf(pulls: readonly Pull[]): (pull: Pull) => string | null {
  const dayOfSession = new Map<string, string>();
  for (const { sessionId, recordedAt } of pulls)
    if (sessionId !== null && recordedAt !== null) dayOfSession.set(sessionId, recordedAt.slice(0, 10));
  return ({ sessionId, recordedAt, cell }) => {
    const day =
      recordedAt?.slice(0, 10) ?? (sessionId === null ? null : (dayOfSession.get(sessionId) ?? sessionId));
    return day === null ? null : JSON.stringify([day, cell]);
  };
}

/** By the clock where every pull of a session has its own time, else by the order in the session. */
function hoursOf(entries: readonly { pull: Pull; session: string | null }[]): {
  hours: (number | null)[];
  timedByOrder: string[];
} {
  const timedByOrder: string[] = [];
  const hours = entries.map(({ pull, session }) => {
    const beside = entries.filter((other) => session !== null && other.session === session);
    if (beside.length === 0) return null;
    const clocks = beside.map((other) => clockOf(other.pull));
    const tellApart = new Set(clocks).size > 1 || beside.length === 1;
    if (tellApart && clocks.every(Number.isFinite)) return clockOf(pull);
    if (beside.some((other) => other.pull.orderInSession === null)) return null;
    timedByOrder.push(pull.name);
    return pull.orderInSession! * HOURS_A_PULL;
  });
  return { hours, timedByOrder };
}

/** Hours of the logger's clock; NaN where only a day is written down. */
const clockOf = ({ recordedAt }: Pull): number =>
  recordedAt?.includes('T') ? Date.parse(recordedAt) / MILLISECONDS_AN_HOUR : Number.NaN;
