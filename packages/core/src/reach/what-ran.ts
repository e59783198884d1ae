import type { LimitId, LimitReading } from '../rule/index.ts';

/** Limits that rest on what is usual or assumed, and not on a maker's or the shop's own word for this part. */
export const BY_WHAT_IS_USUAL: readonly LimitId[] = [
  'injectors',
  'pump',
  'belt',
  'spark',
  'fuelAndCompression',
];

/** What of these the engine passes as it was pulled, with its margin, below zero. */
export type Ran = ReadonlyMap<LimitId, number>;

export const NOTHING_RAN: Ran = new Map();

/** Share of a limit within which two readings of it are the same: a rough look reads few speeds. */
const SAME = 0.005;

export const ranPast = (readings: readonly LimitReading[]): Ran =>
  new Map(readings.flatMap(({ id, binds, margin }) => (binds && margin < 0 ? [[id, margin]] : [])));

/** Readings of a plan, of which a limit by what is usual does not bind as far as the engine was pulled beyond it: it told more than the rule does. */
export const withWhatRan = (readings: readonly LimitReading[], ran: Ran): LimitReading[] =>
  readings.map((one) => {
    const margin = ran.get(one.id);
    return margin === undefined || one.margin < margin - SAME ? one : { ...one, binds: false };
  });
