import type { Provenance } from '../../quantity/index.ts';
import type { UsualRange } from '../model.ts';

const DEGREE = Math.PI / 180;

/**
 * What a degree later costs, share of the work, as the trade has it: between how many degrees later than best, and from what to what a degree (common
 * practice, no source).
 */
export const COST_OF_A_DEGREE = [
  { lateFrom: 0, lateTo: 3, low: 0, high: 0.003 },
  { lateFrom: 5, lateTo: 10, low: 0.005, high: 0.01 },
  { lateFrom: 10, lateTo: 20, low: 0.01, high: 0.02 },
] as const;

/** Share of the work for a degree squared: a parabola is flat at best torque, and these lie in all the ranges above. */
const BY_SQUARE = { low: 0.0004, usual: 0.0005, high: 0.0006 } as const;
/** Degrees beyond which nothing was said: the cost goes on straight. */
const STRAIGHT_FROM = 20;
/** Share of the work that some spark always leaves. */
const MOST = 0.9;

const FROM: Provenance = {
  kind: 'common practice',
  source:
    'common practice, no source: up to 0.3 % a degree near best torque, 0.5 to 1 % from 5 to 10° late, 1 to 2 % beyond',
};

/**
 * Share of the work that is lost with the spark `retard`, rad, later than for best torque. Earlier than that: as much lost again.
 *
 * @example retardCost(10 * Math.PI / 180).usual // 0.05
 */
export function retardCost(retard: number): UsualRange {
  const late = Math.abs(retard) / DEGREE;
  const by = (square: number) =>
    Math.min(
      MOST,
      late <= STRAIGHT_FROM ? square * late * late : square * STRAIGHT_FROM * (2 * late - STRAIGHT_FROM),
    );
  return { low: by(BY_SQUARE.low), usual: by(BY_SQUARE.usual), high: by(BY_SQUARE.high), from: FROM };
}
