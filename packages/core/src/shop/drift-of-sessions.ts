import { mean } from '../numeric/index.ts';
import type { VarianceSeen } from './blend-variance.ts';
import type { Cluster } from './clusters.ts';
import { groupedBy } from './grouped-by.ts';
import type { SessionDrift } from './model.ts';
import { hoursOf } from './sentinel.ts';
import { slopeThrough } from './slope-through.ts';

/** Pulls of one combination from which a slope is taken though nothing else was pulled in between. */
const PULLS_FOR_A_SLOPE = 4;

/** Slope of a session, with what it was read from: its sentinel is looked for only where sessions are shown. */
export interface SessionSlope extends Omit<SessionDrift, 'sentinel'> {
  clusters: readonly Cluster[];
}

/**
 * How each session moved: one slope in time through the pulls of all its combinations, where one was pulled again after
 * another or four times and more. The session that came last first.
 *
 * @example slopesOfSessions(clusters, () => 0.004 ** 2)[0] // { day: '2026-03-16', perHour: -0.002, pulls: 9, … }
 */
export function slopesOfSessions(
  clusters: readonly Cluster[],
  pullVariance: (cluster: Cluster) => number,
): SessionSlope[] {
  const sessions = groupedBy(clusters, ({ sessionId, day, cell }) => sessionId ?? `${day}\n${cell ?? ''}`);
  return sessions
    .map((ofSession) => {
      const { sessionId, day, cell } = ofSession[0]!;
      const timed = ofSession
        .map((one) => ({ one, pulls: one.pulls.filter(({ hours }) => hours !== null) }))
        .filter(({ pulls }) => pulls.length > 0);
      const through = slopeThrough(
        timed.map(({ pulls }) => pulls.map(({ hours, level }) => ({ x: hours!, y: level }))),
      );
      const { slope, squaresOfPlace } = through;
      const perHour = timed.some((one) => tellsDrift(one, timed)) ? slope : null;
      const variance = mean(ofSession.map(pullVariance));
      return {
        sessionId,
        day,
        cell,
        perHour,
        perHourSpread: perHour === null ? null : Math.sqrt(variance / squaresOfPlace),
        pulls: ofSession.reduce((sum, { pulls }) => sum + pulls.length, 0),
        clusters: ofSession,
      };
    })
    .toSorted((one, other) => other.day.localeCompare(one.day));
}

/** Slopes as looks at the variance of drift. */
export function driftSeen(sessions: readonly SessionSlope[]): VarianceSeen[] {
  return sessions.flatMap(({ perHour, perHourSpread }) =>
    perHour === null || perHourSpread === null
      ? []
      : [{ square: perHour ** 2, degreesOfFreedom: 1, nuisance: perHourSpread ** 2 }],
  );
}

type Timed = { one: Cluster; pulls: Cluster['pulls'] };

/** Whether a combination's pulls have another's in between, or are many enough by themselves. */
function tellsDrift(timed: Timed, all: readonly Timed[]): boolean {
  if (timed.pulls.length >= PULLS_FOR_A_SLOPE) return true;
  const own = hoursOf(timed);
  const [low, high] = [Math.min(...own), Math.max(...own)];
  return all.some((other) => other !== timed && hoursOf(other).some((hours) => hours > low && hours < high));
}
