import { ruleNamed } from '../catalogue.ts';
import type { LimitFinding, LimitReading, RuleThresholds } from '../model.ts';
import { thresholdNamed } from '../speaker.ts';
import { type EngineAtLimits, type LimitsAt, plannedAtLimits } from './engine-at-limits.ts';
import type { Measured } from './limit-kind.ts';
import { LIMITS } from './limits.ts';
import { onSheet } from './on-sheet.ts';
import { readingFrom } from './read-limits.ts';

/**
 * Readings in words, in their order: what was looked at, the value, the threshold and where it comes from, and what to do where it
 * is passed. `at` and `thresholds` as they were read with.
 *
 * @example limitFindings(readings, at)[0].said.text // 'Without slip the impeller reaches 49,886 rpm at 6,900 rpm, …'
 */
export function limitFindings(
  readings: readonly LimitReading[],
  at: LimitsAt,
  thresholds: RuleThresholds = {},
): LimitFinding[] {
  const engine = plannedAtLimits(at, thresholds);
  return readings.flatMap((reading) => {
    const { label, measure, tell } = LIMITS[reading.id];
    const measured = measure(engine);
    if (measured === null) return [];
    const { binds } = reading;
    const source = sourceOf(reading.ruleId, measured, engine);
    return [{ ...readingFrom(reading.id, measured, {}), binds, label, source, said: tell(measured, engine) }];
  });
}

/** The sheet's line with its origin, the shop's own value, or what the rule rests on. */
function sourceOf(ruleId: string, { from }: Measured, { sheet, limit }: EngineAtLimits): string {
  if (from !== null && typeof from !== 'string') {
    const { section, field } = from;
    const origin = sheet.sections[section]?.[field]?.origin ?? 'not stated';
    return `the sheet: ${onSheet(section, field)} (${origin})`;
  }
  const threshold = from === null ? null : thresholdNamed(from);
  if (threshold !== null && limit(threshold.id) !== threshold.value)
    return `the shop’s own value of ${threshold.id}`;
  return threshold?.source ?? ruleNamed(ruleId)!.provenance.source;
}
