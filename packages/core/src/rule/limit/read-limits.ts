import { LIMIT_IDS, type LimitId, type LimitReading, type RuleThresholds } from '../model.ts';
import { type LimitsAt, plannedAtLimits } from './engine-at-limits.ts';
import type { Measured } from './limit-kind.ts';
import { LIMITS } from './limits.ts';

/**
 * Each limit of a planned engine beside its value: numbers only, for a search that asks thousands of times. A limit whose inputs are
 * not known, or that does not concern this engine, has no reading (`unknownLimits` says which). A planning aid: makers' limits first.
 *
 * @param binding in place of what binds as the rules are: `{ choke: true }`
 * @param ids     only these; reckoning the spark takes longer than all others together
 * @example readLimits(at, {}, {}).find(({ id }) => id === 'impellerSpeed')?.margin // 0.04
 */
export function readLimits(
  at: LimitsAt,
  thresholds: RuleThresholds,
  binding: Partial<Record<LimitId, boolean>>,
  ids: readonly LimitId[] = LIMIT_IDS,
): LimitReading[] {
  const engine = plannedAtLimits(at, thresholds);
  const readings: LimitReading[] = [];
  for (const id of ids) {
    const measured = LIMITS[id].measure(engine);
    if (measured !== null && !Number.isNaN(measured.margin))
      readings.push(readingFrom(id, measured, binding));
  }
  return readings;
}

/** A measure as a reading; `binding` goes before what the measure and the rules say. */
export function readingFrom(
  id: LimitId,
  { value, threshold, kind, stay, margin, engineSpeedRpm, binds }: Measured,
  binding: Partial<Record<LimitId, boolean>>,
): LimitReading {
  const { ruleId, bindsUsually } = LIMITS[id];
  return {
    id,
    ruleId,
    value,
    threshold,
    kind,
    stay,
    margin,
    engineSpeedRpm,
    binds: binding[id] ?? binds ?? bindsUsually,
  };
}
