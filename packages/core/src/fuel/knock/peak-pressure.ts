import type { ChargeAtLoad, Fuel, FuelSupply } from '../model.ts';
import { burnAt } from './burn-duration.ts';
import { cylinderWith, pressureTrace } from './pressure-trace.ts';
import { trappedCharge } from './trapped-charge.ts';

/**
 * Highest pressure in the cylinder, Pa absolute, with the spark at `advance`, rad before top dead centre: the top of the trace that the
 * knock integral goes along. Planning grade, one zone, without knock: a single cycle goes 10 to 20 % above the mean of many.
 *
 * @example peakPressure(charge, gasoline, { mixes: 'port', advance: 0.45 }) // about 7 MPa at 100 kPa and 9.6:1
 */
export function peakPressure(
  charge: ChargeAtLoad,
  fuel: Fuel,
  { mixes, advance }: { mixes: FuelSupply['mixes']; advance: number },
): number {
  const { compressionRatio, engineSpeedRpm } = charge;
  const burn = burnAt(engineSpeedRpm);
  const cylinder = cylinderWith(trappedCharge(charge, fuel, mixes), {
    compressionRatio,
    engineSpeedRpm,
    burn,
  });
  const { pressure, places } = pressureTrace(cylinder, advance);
  let highest = 0;
  for (let place = 0; place < places; place++) highest = Math.max(highest, pressure[place]!);
  return highest;
}
