import type { CombinationSheet } from '../combination/index.ts';
import { fuelSupplyOf, inductionOfSheet } from '../fuel/index.ts';
import type { EngineAtLimits } from './limit/engine-at-limits.ts';
import { isPassed } from './limit/limit-kind.ts';
import { LIMITS } from './limit/limits.ts';
import { sheetParts } from './limit/sheet-parts.ts';
import type { Finding, LimitId } from './model.ts';
import { fuelOf } from './pull-at-hand.ts';
import type { Speaker } from './speaker.ts';

/** How far an engine was driven, or shall be: highest engine speed, r/min, boost, Pa, and power, W; `null`: not known. */
export interface HardwareReach {
  engineSpeedRpm: number | null;
  boost: number | null;
  power: number | null;
}

/** Limits that a sheet alone answers for, once it is known how far the engine was driven. */
const OF_PARTS: readonly LimitId[] = [
  'pistonSpeed',
  'pistons',
  'rods',
  'crankshaft',
  'block',
  'headClamping',
  'boost',
  'valveSpring',
  'ringGap',
  'fuelAndCompression',
  'plugGap',
];

/**
 * V21, V22, V44 to V46, V50: the parts of a sheet against how far it was driven, or shall be. The same limits bound a plan
 * (`readLimits`).
 *
 * @example hardwareFindings(sheet, { engineSpeedRpm: 7000, boost: 80e3, power: null }, speakerOf('combination 3f2a'))
 */
export function hardwareFindings(
  sheet: CombinationSheet | null,
  reach: HardwareReach,
  speaker: Speaker,
): Finding[] {
  if (sheet === null) return [];
  const at = drivenTo(sheet, reach, speaker);
  return OF_PARTS.flatMap((id) => {
    const { label, ruleId, measure, tell, levelPassed } = LIMITS[id];
    const measured = measure(at);
    if (measured === null || !isPassed(measured)) return [];
    const { value, threshold, kind } = measured;
    const level = levelPassed?.(measured, at);
    return [
      speaker.find(ruleId, {
        input: label,
        value,
        threshold,
        kind,
        ...(level === undefined ? {} : { level }),
        said: tell(measured, at),
      }),
    ];
  });
}

function drivenTo(
  sheet: CombinationSheet,
  { engineSpeedRpm, boost, power }: HardwareReach,
  { limit }: Speaker,
): EngineAtLimits {
  const highest = (value: number | null) => (value === null ? null : { value, rpm: null });
  return {
    sheet,
    parts: sheetParts(sheet),
    input: null,
    curve: null,
    supply:
      fuelOf(sheet) === 'not known' ? null : fuelSupplyOf(sheet, { induction: inductionOfSheet(sheet) }),
    boostCap: null,
    highestRpm: engineSpeedRpm,
    boost: highest(boost),
    power: highest(power),
    limit,
  };
}
