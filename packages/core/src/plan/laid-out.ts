import type { Stay } from './candidate-orders.ts';
import type { DesignedPull } from './designed-pull.ts';

/** What further pulls go on from: what is fitted, and where the day stands. */
export interface OnTheBrake extends DesignedPull {
  /** The session the next pull falls in: that of the last one on the same day, else a new name. */
  session: string | null;
  /** In that session at which the next pull can be made; `null`: the times of its pulls are not known. */
  hours: number | null;
}

export interface Pace {
  minutesPerPull: number;
  /** Between the last pull of one combination and the first of the next, where the engine is taken apart for it. */
  hoursTakenApart: number;
  /** The same where it is not: a pulley, a jet. */
  hoursKept: number;
}

/** The pulls of a plan, each with the set-up, day and hour it would have, and how many hours all take. */
export function laidOut(
  stays: readonly Stay[],
  start: OnTheBrake,
  takenApart: ReadonlySet<string>,
  pace: Pace,
): { pulls: DesignedPull[]; hours: number } {
  const pulls: DesignedPull[] = [];
  let { key, setUp } = start;
  let passed = 0;
  let fitted = 0;
  for (const stay of stays) {
    if (stay.key !== key) {
      const isApart = takenApart.has(stay.key) || takenApart.has(key);
      fitted += isApart ? 1 : 0;
      setUp = isApart ? `planned set-up ${fitted}` : setUp;
      passed += isApart ? pace.hoursTakenApart : pace.hoursKept;
      key = stay.key;
    }
    for (let made = 0; made < stay.count; made += 1) {
      const hours = start.hours === null ? null : start.hours + passed;
      pulls.push({ key, setUp, session: start.session, cell: start.cell, hours });
      passed += pace.minutesPerPull / 60;
    }
  }
  return { pulls, hours: passed };
}
