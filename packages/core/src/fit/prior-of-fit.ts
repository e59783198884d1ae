import {
  BENDS,
  type MatchCase,
  type MatchCurve,
  SPREAD_OF_BEND,
  type SpreadPart,
  solveMatch,
} from '../airpath/index.ts';
import type { MoveId } from './model.ts';
import { MOVES, SHAPED } from './moves.ts';

/**
 * Covariance of the parameters before the fit, in the order of `MOVES`. What else is uncertain of the match and acts as one of them is taken into it, so that the
 * fit may answer for it: a baseline's air that is x too small looks like x more swallowed and x less work of each kilogram; cooler and efficiency look like charge heat; a baseline's power like work.
 */
export function priorOfFit({ input, spread }: MatchCase): number[][] {
  const variance = (part: SpreadPart) => varianceOf(spread, part);
  const air = variance('baselineAir');
  const { ofCooler, ofEfficiency, workOfEfficiency } = likeChargeHeat(
    input.cooler !== null,
    solveMatch(input),
    input,
  );
  const head = variance('head');
  const swallowing = variance('swallowing') + air;
  const chargeHeat =
    variance('chargeHeat') + ofCooler ** 2 * variance('cooler') + ofEfficiency ** 2 * variance('efficiency');
  const work =
    variance('work') + variance('baselinePower') + air + workOfEfficiency ** 2 * variance('efficiency');
  const own: Partial<Record<MoveId, number>> = {
    headScale: head,
    flowScale: variance('mapFlow'),
    swallowingScale: swallowing,
    chargeHeat,
    workFactor: work,
    slip: variance('slip'),
  };
  for (const one of SHAPED) for (const bend of BENDS) own[`${one} ${bend}`] = SPREAD_OF_BEND[bend] ** 2;
  const matrix = MOVES.map((line) =>
    MOVES.map((column) => (column === line ? Math.max(own[line] ?? 0, LEAST_VARIANCE) : 0)),
  );
  const ofSwallowing = MOVES.indexOf('swallowingScale');
  const ofWork = MOVES.indexOf('workFactor');
  matrix[ofSwallowing]![ofWork] = -air;
  matrix[ofWork]![ofSwallowing] = -air;
  return matrix;
}

/** A part that is stated to be certain still needs a positive variance to be fitted with: 0.001 %. */
const LEAST_VARIANCE = 1e-10;

/** Variance of one part over all groups that have it, without how it may bend over speed. */
export function varianceOf(spread: MatchCase['spread'], part: SpreadPart): number {
  let sum = 0;
  for (const { parts, factor, shapes } of spread) {
    const line = parts.findIndex((one, place) => one === part && !shapes?.[place]);
    if (line >= 0) for (const one of factor[line]!) sum += one * one;
  }
  return sum;
}

/** Factor of charge heat, and of work, that a point of effectiveness or efficiency looks like at the highest speed with a solution. */
function likeChargeHeat(hasCooler: boolean, curve: MatchCurve, input: MatchCase['input']) {
  const { dischargeTemperature, efficiency, drivePower, indicatedPower } = curve.figures;
  let node = curve.engineSpeedRpm.length - 1;
  while (node > 0 && !Number.isFinite(dischargeTemperature[node]!)) node -= 1;
  const hot = dischargeTemperature[node]!;
  const ambient = input.air.temperature;
  if (!(hot > ambient)) return { ofCooler: 0, ofEfficiency: 0, workOfEfficiency: 0 };
  const coolant = input.cooler?.coolantTemperature ?? ambient;
  const cooled = input.cooler === null ? hot : hot - input.cooler.effectiveness * (hot - coolant);
  // A charge hardly above the air has a factor that no finite change can tell; the prior stays wide, not infinite.
  const rise = Math.max(cooled - ambient, LEAST_RISE);
  const ofEfficiency = (hot - ambient) / Math.max(efficiency[node]!, 0.3);
  return {
    ofCooler: hasCooler ? (hot - coolant) / rise : 0,
    ofEfficiency: ((1 - (input.cooler?.effectiveness ?? 0)) * ofEfficiency) / rise,
    workOfEfficiency: drivePower[node]! / (indicatedPower[node]! * Math.max(efficiency[node]!, 0.3)),
  };
}

/** K */
const LEAST_RISE = 5;
