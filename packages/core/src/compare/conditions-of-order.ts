import { extentOf } from '../numeric/extent.ts';
import type { Pull } from '../pull/index.ts';
import { figureOf } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import { type CountedPull, numberCondition, rangeText, textCondition } from './condition.ts';
import type { ConditionDifference } from './model.ts';

/** A supercharger with its cooler wants at least this between two pulls, s. Common practice, no source. */
const LEAST_WAIT = 120;

/** Place of each pull in its session, and on a supercharged engine the wait before it. */
export function conditionsOfOrder(
  pulls: readonly CountedPull[],
  besides: readonly Pull[],
  boosted: boolean,
): ConditionDifference[] {
  return [placeInSession(pulls), ...(boosted ? [waits(pulls, besides)] : [])];
}

/** Alike where the places of any two combinations overlap, so that what drifts meets both. */
function placeInSession(pulls: readonly CountedPull[]): ConditionDifference {
  const condition = numberCondition(pulls, {
    id: 'place-in-session',
    label: 'Pull of the session',
    why: 'All pulls of one side before all of the other: what drifts or soaks through the day then counts as gain. Going back to the first (A-B-A) takes it out (common practice, no source).',
    read: ({ pull }) => pull.orderInSession,
    text: (low, high) => said`${low === high ? `number ${low}` : `numbers ${low} to ${high}`}`,
    differ: () => false,
  });
  if (condition.state === 'unknown') return condition;
  const keys = [...new Set(pulls.map(({ key }) => key))];
  const ranges = keys.map((key) =>
    extentOf(pulls.filter((one) => one.key === key).map(({ pull }) => pull.orderInSession!)),
  );
  const apart = ranges.some(([low], first) =>
    ranges.some(([, high], other) => first !== other && high < low),
  );
  return { ...condition, state: apart ? 'differs' : 'alike' };
}

/** From the start of the pull before it in the session to its own. */
function waits(pulls: readonly CountedPull[], besides: readonly Pull[]): ConditionDifference {
  const known = [
    ...new Map([...besides, ...pulls.map(({ pull }) => pull)].map((one) => [one.id, one])).values(),
  ];
  const found = pulls.map(({ pull }) => waitBefore(pull, known));
  const condition = textCondition(pulls, {
    id: 'wait',
    label: 'Time since the pull before',
    why: 'From start to start; 2 to 5 min are usual on a supercharged engine. A pull after less than 2 min starts with a soaked cooler and is not alike one that waited (common practice, no source).',
    read: ({ pull }) => {
      const wait = waitBefore(pull, known);
      if (wait === null || wait === 'first') return wait === null ? null : 'first of the session';
      return rangeText((seconds) =>
        figureOf(seconds, 'time', { units: { us: 'min', si: 'min' }, decimals: 0 }),
      )(wait, wait);
    },
  });
  const short = found.filter((wait) => typeof wait === 'number' && wait < LEAST_WAIT).length;
  const missing = found.includes(null);
  const state = short > 0 && short < found.length ? 'differs' : missing ? 'unknown' : 'alike';
  return { ...condition, state };
}

/** Seconds since the pull before it in its session; `first`: there is none; `null`: not known, or that pull is not at hand. */
function waitBefore(pull: Pull, known: readonly Pull[]): number | 'first' | null {
  if (pull.orderInSession === 1) return 'first';
  if (pull.orderInSession === null || pull.sessionId === null || pull.recordedAt === null) return null;
  const before = known.find(
    (one) => one.sessionId === pull.sessionId && one.orderInSession === pull.orderInSession! - 1,
  );
  if (before?.recordedAt == null) return null;
  const seconds = (Date.parse(pull.recordedAt) - Date.parse(before.recordedAt)) / 1000;
  return seconds >= 0 ? seconds : null;
}
