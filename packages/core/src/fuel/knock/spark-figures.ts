import type { ChargeAtLoad, Fuel, FuelSupply, SparkAllowed } from '../model.ts';
import { burnAt, quickestOf, sparkForBestTorque } from './burn-duration.ts';
import { ACTIVATION_TEMPERATURE, DELAY_BY_OCTANE } from './ignition-delay.ts';
import { knockIntegral } from './knock-integral.ts';
import { octaneForKnock } from './octane-for-knock.ts';
import { type Cylinder, cylinderWith, pressureTrace } from './pressure-trace.ts';
import { retardCost } from './retard-cost.ts';
import { trappedCharge } from './trapped-charge.ts';

const DEGREE = Math.PI / 180;

/**
 * One standard deviation each: K of the charge, octane numbers, share of the delay; and how quick the quickest cycle is, as the share of the delay that a
 * degree and a half of burning is worth (common practice, no source).
 */
export const LEFT_OPEN = { charge: 10, octane: 2, delay: 0.1, quickest: 0.15 } as const;
/** rad before top dead centre below which no spark is looked for. */
export const LATEST = -10 * DEGREE;
/** Share of the delay to which a spark is found: some thousandths of a degree. */
const NEAR_ENOUGH = 2e-4;
const MOST_STEPS = 20;
/** By how much the integral's logarithm rises for a rad of spark, to begin with: a tenth a degree. */
const FIRST_SLOPE = 6;

/** A spark with what it rests on, before any words. */
export interface SparkFigures extends Omit<SparkAllowed, 'assumptions'> {
  /** K by which fuel that evaporates behind the manifold cools the charge. */
  cooling: number;
  coolingSpread: number;
}

/**
 * The figures of `sparkAllowed` without its words. What the assumptions leave open all moves the delay, by its own share or by the end gas's temperature;
 * put together as a share of the delay it is another limit for the same integral, so that one cylinder answers for all three.
 */
export function sparkFigures(
  charge: ChargeAtLoad,
  fuel: Fuel,
  { mixes, ends = true }: { mixes: FuelSupply['mixes']; ends?: boolean },
): SparkFigures {
  const { compressionRatio, engineSpeedRpm } = charge;
  const { octane } = octaneForKnock(fuel);
  const burn = burnAt(engineSpeedRpm);
  const trapped = trappedCharge(charge, fuel, mixes);
  const cylinder = cylinderWith(trapped, { compressionRatio, engineSpeedRpm, burn: quickestOf(burn) });
  const forBestTorque = sparkForBestTorque(burn);

  const search = sparkSearch(cylinder, octane, forBestTorque);
  const allowed = search(0);
  const open = ends ? delayLeftOpen(cylinder, octane, allowed) : 0;
  const low = ends ? search(-open) : allowed;
  const high = ends ? search(open) : allowed;
  const lost = (spark: number) => retardCost(forBestTorque - spark);
  return {
    forBestTorque,
    allowed,
    low,
    high,
    work: 1 - lost(allowed).usual,
    workLow: 1 - lost(low).high,
    workHigh: 1 - lost(high).low,
    cooling: trapped.cooling,
    coolingSpread: trapped.coolingSpread,
  };
}

/**
 * Finds the spark at which the integral reaches `exp(limit)`, between the latest looked for and that for best torque. The logarithm of the integral over
 * the spark rises and is nearly straight, so that a secant finds it in three or four sparks.
 */
function sparkSearch(cylinder: Cylinder, octane: number, best: number): (limit: number) => number {
  const logAt = (spark: number) => Math.log(knockIntegral(pressureTrace(cylinder, spark), octane));
  const atBest = logAt(best);
  return (limit) => {
    let before = { spark: best, over: atBest - limit };
    if (before.over <= 0) return best;
    let slope = FIRST_SLOPE;
    for (let step = 0; step < MOST_STEPS; step++) {
      const spark = Math.min(best, Math.max(LATEST, before.spark - before.over / slope));
      const over = logAt(spark) - limit;
      if (Math.abs(over) < NEAR_ENOUGH || (spark === LATEST && over > 0)) return spark;
      const steeper = (over - before.over) / (spark - before.spark);
      if (steeper > 0) slope = steeper;
      before = { spark, over };
    }
    return before.spark;
  };
}

/** One standard deviation of the delay's logarithm, at the hottest end gas with that spark. */
function delayLeftOpen(cylinder: Cylinder, octane: number, spark: number): number {
  const { trapped } = cylinder;
  const { temperature, places } = pressureTrace(cylinder, spark);
  let hottest = 0;
  for (let place = 0; place < places; place++) hottest = Math.max(hottest, temperature[place]!);
  const ofCharge = Math.hypot(LEFT_OPEN.charge, trapped.coolingSpread) / trapped.temperature;
  return Math.hypot(
    (DELAY_BY_OCTANE * LEFT_OPEN.octane) / octane,
    LEFT_OPEN.delay,
    LEFT_OPEN.quickest,
    (ACTIVATION_TEMPERATURE / hottest) * ofCharge,
  );
}
