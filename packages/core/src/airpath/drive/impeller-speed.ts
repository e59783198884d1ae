import type { Drive } from '../model.ts';

/** Kinds whose speed lies fast, and whose slip is none. */
const WITH_TEETH: ReadonlySet<Drive['kind']> = new Set(['toothed belt', 'chain', 'gear', 'direct']);

export const hasTeeth = (kind: Drive['kind']): boolean => WITH_TEETH.has(kind);

/** Share of the speed lost: that of the drive, and none where teeth hold. */
export const slipOf = (drive: Drive): number => (hasTeeth(drive.kind) ? 0 : drive.slip);

/**
 * Speed of the impeller, r/min: engine speed x pulley ratio x step-up x (1 - slip).
 *
 * @param slip in place of the drive's: 0 where a limit is checked
 * @example impellerSpeed({ kind: 'V belt', pulleyRatio: 2, stepUp: 4, slip: 0.01, ... }, 6000) // 47 520
 */
export function impellerSpeed(drive: Drive, engineSpeedRpm: number, slip: number = slipOf(drive)): number {
  return engineSpeedRpm * drive.pulleyRatio * drive.stepUp * (1 - slip);
}

/**
 * The highest speed of the impeller, r/min, of an engine stopped at a speed: with what that may be overrun by, and without slip, for
 * a belt that slips today grips after it was tightened.
 *
 * @example highestImpellerSpeed({ pulleyRatio: 2, stepUp: 3.5, overRevMarginRpm: 200, ... }, 6800) // 49 000
 */
export const highestImpellerSpeed = (drive: Drive, stoppedAtRpm: number): number =>
  impellerSpeed(drive, stoppedAtRpm + drive.overRevMarginRpm, 0);

/** m/s at the exit of a wheel, m, at its speed, r/min: pi D n / 60. */
export const tipSpeedOf = (wheelExitDiameter: number, speedRpm: number): number =>
  (Math.PI * wheelExitDiameter * speedRpm) / 60;
