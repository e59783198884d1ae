import type { LimitId } from '../model.ts';
import type { LimitKind } from './limit-kind.ts';
import { beltLimit } from './of-belt.ts';
import {
  boostCapLimit,
  boostLimit,
  headClampingLimit,
  plugGapLimit,
  ringGapLimit,
  valveSpringLimit,
} from './of-boost.ts';
import { chokeLimit, coolerLimit, surgeLimit } from './of-compressor.ts';
import { fuelLineLimit, injectorsLimit, pumpLimit } from './of-fuel.ts';
import { impellerSpeedLimit, tipSpeedLimit } from './of-impeller.ts';
import { blockLimit, crankshaftLimit, pistonSpeedLimit, pistonsLimit, rodsLimit } from './of-short-block.ts';
import { cylinderPressureLimit, fuelAndCompressionLimit, sparkLimit } from './of-spark.ts';

/** What each limit is called, the rule that has its threshold, whether a plan may not pass it; and how it is measured and told. */
export const LIMITS: Readonly<Record<LimitId, LimitKind>> = {
  impellerSpeed: impellerSpeedLimit,
  tipSpeed: tipSpeedLimit,
  belt: beltLimit,
  surge: surgeLimit,
  choke: chokeLimit,
  injectors: injectorsLimit,
  pump: pumpLimit,
  fuelLine: fuelLineLimit,
  spark: sparkLimit,
  fuelAndCompression: fuelAndCompressionLimit,
  boostCap: boostCapLimit,
  boost: boostLimit,
  pistonSpeed: pistonSpeedLimit,
  cylinderPressure: cylinderPressureLimit,
  rods: rodsLimit,
  pistons: pistonsLimit,
  crankshaft: crankshaftLimit,
  block: blockLimit,
  headClamping: headClampingLimit,
  ringGap: ringGapLimit,
  valveSpring: valveSpringLimit,
  plugGap: plugGapLimit,
  cooler: coolerLimit,
};
