import type { FlowLoss } from '../model.ts';

/** Nothing lost. Its flow and density are 1 so that the law stays defined. */
export const NO_LOSS: FlowLoss = { pressureDifference: 0, atFlow: 1, atDensity: 1 };

/** Density, kg/m³, that a loss is taken at where none is told with it: air at 15 °C and 101.325 kPa. */
export const USUAL_DENSITY = 1.225;

/**
 * A loss from what a person tells of it: so much pressure at so much air. Without a flow, or of no pressure, nothing is known of
 * how it grows: no loss.
 *
 * @example lossFrom({ pressureDifference: 1000, atFlow: 0.3 }) // 1 kPa at 0.3 kg/s of air at 1.225 kg/m³
 */
export function lossFrom(told: {
  /** Pa */
  pressureDifference: number;
  /** kg/s */
  atFlow: number;
  /** kg/m³ of the air it was measured in; missing: usual air */
  atDensity?: number;
}): FlowLoss {
  if (!(told.pressureDifference > 0 && told.atFlow > 0)) return NO_LOSS;
  return {
    pressureDifference: told.pressureDifference,
    atFlow: told.atFlow,
    atDensity: told.atDensity ?? USUAL_DENSITY,
  };
}

/** What of a loss does not change from flow to flow: Pa·kg/m³ for a flow of 1 kg/s. Pressure lost is it x flow² / density. */
export const lossFactor = (loss: FlowLoss): number =>
  (loss.pressureDifference * loss.atDensity) / (loss.atFlow * loss.atFlow);

/**
 * Pressure lost, Pa, at a flow, kg/s, of air of a density, kg/m³, before the loss.
 *
 * @example pressureLost({ pressureDifference: 1000, atFlow: 0.3, atDensity: 1.2 }, { flow: 0.6, density: 1.2 }) // 4000
 */
export const pressureLost = (loss: FlowLoss, { flow, density }: { flow: number; density: number }): number =>
  (lossFactor(loss) * flow * flow) / density;
