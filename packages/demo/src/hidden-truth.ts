import { DEMO_SEED } from './demo-seed.ts';
import { noiseFor } from './noise.ts';

/**
 * What nobody in the story knows: how the invented engine takes boost, what its blower, belt and cooler truly do, and how far the map is off. The
 * demo's own seed has the values that its story was written for; any other seed has another engine and blower of the kind, so that whoever
 * foretells pulls can be tried on many worlds.
 */
export interface HiddenTruth {
  /** Boost on the first pulley at 6,500 r/min, psi, and the power of engine speed with which it grows. */
  boostAtTop: number;
  boostExponent: number;
  /** Share of torque gained for each share of pressure. */
  torqueOfBoost: number;
  /** K by which the charge is warmer than the air at 70 kPa of boost, beside the first 4. */
  chargeRise: number;
  /** Share of speed that creep takes; and slip at a crank torque of 48 N·m. */
  creep: number;
  slip: number;
  /** By how much head falls at the usual flow, and work with flow. */
  headFall: number;
  workFall: number;
  /** Head of the map over that of the blower on the engine: another one of the same series was measured. */
  mapShortOf: number;
  /** On the second pulley: heat that comes through the cooler, over what the same water took before. */
  warmer: number;
  /** Where boost rises, less burnt gas stays behind: more air for each share of pressure. */
  scavenged: number;
  /** Knock control takes spark away towards the top: share of the work lost at 6,500 r/min. */
  sparkLost: number;
}

const OF_THE_STORY: HiddenTruth = {
  boostAtTop: 10.4,
  boostExponent: 1.95,
  torqueOfBoost: 0.7075,
  chargeRise: 15,
  creep: 0.007,
  slip: 0.006,
  headFall: 0.167,
  workFall: 0.16,
  mapShortOf: 0.975,
  warmer: 1.06,
  scavenged: 0.05,
  sparkLost: 0.009,
};

/** One deviation between worlds, as shares of the story's values. */
const APART: HiddenTruth = {
  boostAtTop: 0.03,
  boostExponent: 0.03,
  torqueOfBoost: 0.03,
  chargeRise: 0.15,
  creep: 0.3,
  slip: 0.25,
  headFall: 0.1,
  workFall: 0.2,
  mapShortOf: 0.025,
  warmer: 0.03,
  scavenged: 0.5,
  sparkLost: 0.5,
};

/** Deviations beyond which no world lies: a belt that lets go is a fault and no world to foretell in. */
const FARTHEST = 1.3;

/** @example hiddenTruthOf(7).mapShortOf // another map, a little further off or nearer */
export function hiddenTruthOf(seed: number): HiddenTruth {
  if (seed === DEMO_SEED) return OF_THE_STORY;
  return Object.fromEntries(
    Object.entries(OF_THE_STORY).map(([name, value]) => {
      const drawn = noiseFor(seed, `hidden ${name}`).normal();
      const off = APART[name as keyof HiddenTruth] * Math.max(-FARTHEST, Math.min(FARTHEST, drawn));
      return [name, value * (1 + off)];
    }),
  ) as unknown as HiddenTruth;
}
