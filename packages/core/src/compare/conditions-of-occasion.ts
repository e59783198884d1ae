import { numberFigure } from '../quantity/index.ts';
import { type CountedPull, isNoted, numberCondition, rangeText, textCondition } from './condition.ts';
import type { ConditionDifference } from './model.ts';

const OLDEST_DAYS = 30;

/** Day, session, cell, set-up and age: what makes repeats scatter more than they do back to back. */
export function conditionsOfOccasion(pulls: readonly CountedPull[]): ConditionDifference[] {
  return [
    textCondition(pulls, {
      id: 'day',
      label: 'Day',
      why: 'Another day adds about 1 % of scatter that no factor takes out (from memory of the trade).',
      read: ({ pull }) => dayOf(pull.recordedAt),
    }),
    age(pulls),
    textCondition(pulls, {
      id: 'session',
      label: 'Session',
      why: 'Pulls of one session share cell air, fuel and zero of the load cell: another session is not alike (common practice, no source).',
      read: ({ pull }) => pull.sessionId,
      text: numbered(
        'session',
        pulls.map(({ pull }) => pull.sessionId),
      ),
    }),
    textCondition(pulls, {
      id: 'cell',
      label: 'Cell',
      why: 'Between two cells lie 2 to 3 % (from memory of the trade).',
      read: ({ pull }) => pull.cell,
    }),
    textCondition(pulls, {
      id: 'set-up',
      label: 'Set-up on the brake',
      why: 'Taking apart and putting together adds about 0.5 % of scatter on the same day (from memory of the trade).',
      read: ({ pull }) => pull.setUpId,
      text: numbered(
        'set-up',
        pulls.map(({ pull }) => pull.setUpId),
      ),
    }),
    textCondition(pulls, {
      id: 'operator',
      label: 'Operator',
      why: 'Another hand on the brake warms up, waits and tips in otherwise: no other operator is let pass (common practice, no source).',
      read: ({ pull }) => pull.operator,
    }),
  ].filter((condition) => condition.id !== 'operator' || isNoted(condition));
}

/** Days from the first counted pull to each. */
function age(pulls: readonly CountedPull[]): ConditionDifference {
  const days = (counted: CountedPull) =>
    counted.pull.recordedAt === null ? null : Date.parse(counted.pull.recordedAt) / 86_400_000;
  const first = Math.min(
    ...(pulls.map(days).filter((day) => day !== null && Number.isFinite(day)) as number[]),
  );
  return numberCondition(pulls, {
    id: 'age',
    label: 'Days since the first pull',
    why: `An engine wears in and a cell drifts: more than ${OLDEST_DAYS} days between compared pulls is long (common practice, no source).`,
    read: (counted) => {
      const day = days(counted);
      return day === null ? null : day - first;
    },
    text: rangeText((day) => numberFigure(Math.floor(day), 0)),
    differ: (low, high) => high - low > OLDEST_DAYS,
  });
}

/** The day of the logger's own clock. */
const dayOf = (recordedAt: string | null): string | null => recordedAt?.slice(0, 10) ?? null;

/** Ids are nothing to read: the first is called 1, the next 2. */
function numbered(word: string, ids: readonly (string | null)[]): (id: string) => string {
  const order = [...new Set(ids.filter((id) => id !== null))];
  return (id) => (order.length === 1 ? `the same ${word}` : `${word} ${order.indexOf(id) + 1}`);
}
