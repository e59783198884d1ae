export { RULES, ruleNamed } from './catalogue.ts';
export { compressorEfficiency } from './compressor-heat.ts';
export {
  type ComparisonContext,
  findingsOfComparison,
  SHOWN_AS_CONDITIONS,
} from './findings-of-comparison.ts';
export { findingsOfMatch } from './findings-of-match.ts';
export { findingsOfPull } from './findings-of-pull.ts';
export { findingsOfSession, type SessionPull } from './findings-of-session.ts';
export { findingsOfSheet } from './findings-of-sheet.ts';
export { type HardwareReach, hardwareFindings } from './hardware.ts';
export { driveRatio, impellerFindings, type TurningReach } from './impeller.ts';
export type { LimitsAt } from './limit/engine-at-limits.ts';
export { limitFindings } from './limit/limit-findings.ts';
export { LIMITS } from './limit/limits.ts';
export { readLimits } from './limit/read-limits.ts';
export { unknownLimits } from './limit/unknown-limits.ts';
export { meanEffectivePressure } from './mean-pressure.ts';
export * from './model.ts';
export type { RuleContext } from './pull-at-hand.ts';
export { isSettable, type Speaker, speakerOf, thresholdNamed } from './speaker.ts';
export { withSilenced } from './with-silenced.ts';
export { findingsOfRemarks, remarksBeside, ruleOfRemark } from './wrapped-remarks.ts';
