import type { FlowLoss } from '../model.ts';
import { lossFrom, USUAL_DENSITY } from './loss.ts';

/**
 * Loss of a carburettor from its rating: a volume flow, m³/s, at a depression, Pa. Square-root law of an orifice, so pressure
 * goes with flow squared over density; holds while the depression is small beside the pressure (below some 10 %).
 *
 * @example carburettorLoss({ volumeFlow: 0.354, pressureDifference: 5079 }) // 750 cfm at 1.5 inHg: 5079 Pa at 0.4336 kg/s
 */
export function carburettorLoss(rating: {
  volumeFlow: number;
  pressureDifference: number;
  /** kg/m³ of the air it was rated with; missing: usual air */
  density?: number;
}): FlowLoss {
  const density = rating.density ?? USUAL_DENSITY;
  return lossFrom({
    pressureDifference: rating.pressureDifference,
    atFlow: rating.volumeFlow * density,
    atDensity: density,
  });
}
