import type { HiddenTruth } from './hidden-truth.ts';

/**
 * The invented engine's answer to full throttle: plain curves drawn by hand, so that the demo book cannot explain
 * itself through the formulas that Pullbook would use on it. Reference air: 99 kPa dry and 25 °C.
 */
export type Build = 'naturally aspirated' | 'supercharged' | 'supercharged, longer cam';

/** What the engine does at full throttle at one engine speed; inside units. */
export interface FullThrottle {
  torque: number;
  boost: number;
  lambda: number;
  /** How much warmer the charge is than the inlet air, K. */
  chargeRise: number;
  /** Fuel burnt at a power, kg/s. */
  fuelFlow: (power: number) => number;
}

const NEWTON_METRE_PER_POUND_FOOT = 1.3558179483314;
const WATT_PER_HORSEPOWER = 745.69987158227;
const PASCAL_PER_PSI = 6894.757293168;
const POUND_FOOT_RPM_PER_HORSEPOWER = 5252.113;

/** Torque at full throttle in the reference air, N·m. */
export function inventedTorque(build: Build, engineSpeedRpm: number, hidden: HiddenTruth): number {
  const bare = nakedTorqueLbFt(engineSpeedRpm);
  if (build === 'naturally aspirated') return bare * NEWTON_METRE_PER_POUND_FOOT;
  const blown = bare * (1 + hidden.torqueOfBoost * (baseBoostPsi(engineSpeedRpm, hidden) / 14.36));
  const longer =
    build === 'supercharged'
      ? 0
      : (camGainHp(engineSpeedRpm) * POUND_FOOT_RPM_PER_HORSEPOWER) / Math.max(engineSpeedRpm, 1000);
  return (blown + longer) * NEWTON_METRE_PER_POUND_FOOT;
}

/** Gauge pressure in the manifold at full throttle, Pa; a little below ambient without a supercharger. */
export function inventedBoost(build: Build, engineSpeedRpm: number, hidden: HiddenTruth): number {
  if (build === 'naturally aspirated') return -0.28 * (engineSpeedRpm / 6500) ** 2 * PASCAL_PER_PSI;
  const swallowed = build === 'supercharged' ? 0 : 0.045 + 0.061 * rise(engineSpeedRpm, 3000, 6500);
  return baseBoostPsi(engineSpeedRpm, hidden) * (1 - swallowed) * PASCAL_PER_PSI;
}

/** Air-fuel ratio over the stoichiometric one at full throttle. */
export function inventedLambda(build: Build, engineSpeedRpm: number): number {
  return build === 'naturally aspirated'
    ? 0.885 - 0.012 * rise(engineSpeedRpm, 3000, 6500)
    : 0.812 - 0.022 * rise(engineSpeedRpm, 3000, 6000);
}

/** Fuel burnt at a power, kg/s. Consumption in lb/(hp·h): 0.47 bare, 0.57 under boost (common practice, no source). */
export function inventedFuelFlow(build: Build, powerWatt: number): number {
  const poundPerHour = (build === 'naturally aspirated' ? 0.47 : 0.57) * (powerWatt / WATT_PER_HORSEPOWER);
  return (poundPerHour * 0.45359237) / 3600;
}

/** How much warmer the charge is than the inlet air, K. */
export function inventedChargeRise(build: Build, engineSpeedRpm: number, hidden: HiddenTruth): number {
  if (build === 'naturally aspirated') return 5;
  return 4 + hidden.chargeRise * (inventedBoost(build, engineSpeedRpm, hidden) / 70_000);
}

/** A broad hump: 301 lb-ft at 4,600 r/min, falling gently below it and faster above. */
function nakedTorqueLbFt(engineSpeedRpm: number): number {
  const thousandsOff = (engineSpeedRpm - 4600) / 1000;
  const share = thousandsOff < 0 ? 0.032 * thousandsOff ** 2 : 0.01744 * thousandsOff ** 3;
  return 301 * (1 - Math.min(share, 0.6));
}

/** A centrifugal supercharger's boost grows about with the square of engine speed. */
function baseBoostPsi(engineSpeedRpm: number, { boostAtTop, boostExponent }: HiddenTruth): number {
  return boostAtTop * (engineSpeedRpm / 6500) ** boostExponent;
}

/** The longer cam loses a little low down and gains towards the top. */
function camGainHp(engineSpeedRpm: number): number {
  if (engineSpeedRpm < 4000) return (-4 * (4000 - engineSpeedRpm)) / 1000;
  return 40 * rise(engineSpeedRpm, 4000, 6500) ** 1.75;
}

/** 0 at `from`, 1 at `to`, straight between, growing on above. */
function rise(engineSpeedRpm: number, from: number, to: number): number {
  return Math.max(0, (engineSpeedRpm - from) / (to - from));
}
