import { torqueFromPower } from '../../quantity/index.ts';
import type { Drive } from '../model.ts';
import { gripRatio } from './belt.ts';
import { type BeltClass, beltClassFor } from './belt-class.ts';
import { hasTeeth, highestImpellerSpeed, impellerSpeed, tipSpeedOf } from './impeller-speed.ts';

/** Of a ribbed belt in its grooves, wedge included; of a V belt likewise. Common practice, no source. */
const EFFECTIVE_FRICTION = 0.9;

/** The drive that the trade's powers for a belt are told of: they are pulls only with it. Common practice, no source. */
const TOLD_OF = { engineSpeedRpm: 6500, crankPulleyDiameter: 0.1905, wrapAngle: (170 * Math.PI) / 180 };

/** What a drive does at one engine speed; inside units, `null` where something needed is not known. */
export interface DriveFigures {
  impellerSpeedRpm: number;
  tipSpeed: number | null;
  /** N·m at the crankshaft */
  crankTorque: number;
  /** N: tight less slack side, `2 T / d` of the crank pulley */
  beltPull: number | null;
  /** m/s */
  beltSpeed: number | null;
  /** Tight over slack side's pull before it slips, about the blower pulley. */
  gripRatio: number | null;
  /** Share of the tight side's pull that can be used: 1 - 1 / grip ratio. */
  gripShare: number | null;
  /** N, tight side at the least tension that holds: pull / grip share. */
  leastTightPull: number | null;
  /** Pull over what the belt's ribs are known to hold at most, this wrap against the usual one; 1: slip is to be expected. */
  gripUsed: number | null;
  belt: BeltClass | null;
  /** r/min of the impeller at zero slip, at the engine's limit, or this speed where it is higher, plus the over-rev margin. */
  highestImpellerSpeedRpm: number | null;
  /** That over the maker's limit. */
  limitUsed: number | null;
}

/**
 * Speeds, torque, belt pull and grip of a drive at one engine speed. A belt's pull rests on the crank pulley alone: at the same
 * ratio a bigger crank pulley lowers it in proportion. The impeller's limit is checked without slip and with the over-rev margin,
 * for a belt that grips today may have slipped when it was measured. Planning aid: the maker's limit rules.
 *
 * @example driveFigures(drive, { engineSpeedRpm: 6500, drivePower: 44_742, wheelExitDiameter: null }).beltPull // 690 N on a crank pulley of 190.5 mm
 */
export function driveFigures(
  drive: Drive,
  at: {
    engineSpeedRpm: number;
    /** W at the crankshaft */
    drivePower: number;
    /** m; `null`: not known */
    wheelExitDiameter: number | null;
  },
): DriveFigures {
  const speed = impellerSpeed(drive, at.engineSpeedRpm);
  const crankTorque = torqueFromPower(at.drivePower, at.engineSpeedRpm);
  const { crankPulleyDiameter: diameter, engineSpeedLimitRpm: limit, maximumImpellerSpeedRpm: most } = drive;
  const isBelt = drive.kind.endsWith('belt');
  const beltPull = isBelt && diameter !== null ? (2 * crankTorque) / diameter : null;
  const highest = limit === null ? null : highestImpellerSpeed(drive, Math.max(limit, at.engineSpeedRpm));
  return {
    impellerSpeedRpm: speed,
    tipSpeed: at.wheelExitDiameter === null ? null : tipSpeedOf(at.wheelExitDiameter, speed),
    crankTorque,
    beltPull,
    beltSpeed: isBelt && diameter !== null ? tipSpeedOf(diameter, at.engineSpeedRpm) : null,
    ...gripOf(drive, beltPull),
    belt: drive.kind === 'ribbed belt' ? beltClassFor(at.drivePower, drive.ribs) : null,
    highestImpellerSpeedRpm: highest,
    limitUsed: highest === null || most === null ? null : highest / most,
  };
}

type Grip = Pick<DriveFigures, 'gripRatio' | 'gripShare' | 'leastTightPull' | 'gripUsed'>;

function gripOf(drive: Drive, beltPull: number | null): Grip {
  if (hasTeeth(drive.kind) || drive.wrapAngle === null) {
    return { gripRatio: null, gripShare: null, leastTightPull: null, gripUsed: null };
  }
  const ratio = gripRatio({ friction: EFFECTIVE_FRICTION, wrap: drive.wrapAngle });
  const gripShare = 1 - 1 / ratio;
  const held = drive.kind === 'ribbed belt' ? pullHeld(drive.ribs, gripShare) : null;
  return {
    gripRatio: ratio,
    gripShare,
    leastTightPull: beltPull === null ? null : beltPull / gripShare,
    gripUsed: beltPull === null || held === null ? null : beltPull / held,
  };
}

/** N that so many ribs hold at most at their usual tension, by the trade's table. */
function pullHeld(ribs: number | null, gripShare: number): number | null {
  const { most } = beltClassFor(0, ribs);
  if (most === null) return null;
  const pull = (2 * torqueFromPower(most, TOLD_OF.engineSpeedRpm)) / TOLD_OF.crankPulleyDiameter;
  const usualShare = 1 - 1 / gripRatio({ friction: EFFECTIVE_FRICTION, wrap: TOLD_OF.wrapAngle });
  return (pull * gripShare) / usualShare;
}
