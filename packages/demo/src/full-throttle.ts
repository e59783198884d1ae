import type { AirReading } from '@pullbook/core/air';
import type { HiddenTruth } from './hidden-truth.ts';
import {
  type Build,
  type FullThrottle,
  inventedBoost,
  inventedChargeRise,
  inventedFuelFlow,
  inventedLambda,
  inventedTorque,
} from './invented-engine.ts';
import { withSmallerPulley } from './smaller-pulley.ts';
import { shareOfReference } from './weather.ts';

/** The curves drawn by hand, and the one that is computed from them. */
export type DemoBuild = Build | 'supercharged, smaller pulley';

/** An engine on the brake on one day. */
export interface OnTheBrake {
  at: (engineSpeedRpm: number) => FullThrottle;
  /** What the day's air makes of torque: curves by hand are told in reference air, the computed one in the day's. */
  weatherShare: number;
}

/** How a build runs in the air of its pull. */
export function onTheBrake(build: DemoBuild, air: AirReading, hidden: HiddenTruth): OnTheBrake {
  if (build === 'supercharged, smaller pulley')
    return { at: (engineSpeedRpm) => withSmallerPulley(engineSpeedRpm, air, hidden), weatherShare: 1 };
  return {
    at: (engineSpeedRpm) => ({
      torque: inventedTorque(build, engineSpeedRpm, hidden),
      boost: inventedBoost(build, engineSpeedRpm, hidden),
      lambda: inventedLambda(build, engineSpeedRpm),
      chargeRise: inventedChargeRise(build, engineSpeedRpm, hidden),
      fuelFlow: (power) => inventedFuelFlow(build, power),
    }),
    weatherShare: shareOfReference(air),
  };
}
