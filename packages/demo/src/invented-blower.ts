import type { HiddenTruth } from './hidden-truth.ts';

/**
 * What the invented blower and its belt truly do. Nothing of it stands on a sheet, in a note or in the blower's map: the map
 * is a little off, as maps are, and slip is measured by nobody. Formulas of our own, drawn by hand like the engine's.
 */
export const WHEEL_DIAMETER = 0.124;
export const CRANK_PULLEY = 0.165;
export const STEP_UP = 3.6;
/** Power at the impeller over power at the crankshaft. */
export const GEARBOX = 0.96;

/** Volume flow for which the other figures are told, over tip speed times the wheel's diameter squared. */
const USUAL_FLOW = 0.078;

/** Ideal head over tip speed squared: falls with the fourth power of flow, as a wheel with radial blades does right of its best. */
export function headCoefficient(flowCoefficient: number, { headFall }: HiddenTruth): number {
  return 0.8 - headFall * (flowCoefficient / USUAL_FLOW) ** 4;
}

/** Ideal work over real work at a flow. */
export function blowerEfficiency(flowCoefficient: number, hidden: HiddenTruth): number {
  const off = flowCoefficient / USUAL_FLOW;
  return headCoefficient(flowCoefficient, hidden) / (0.94 - hidden.workFall * (off - 0.8));
}

/** Share of its speed that the belt loses: creep, and slip that sets in steeply once the crank has to pull hard. */
export function beltSlip(driveTorque: number, { creep, slip }: HiddenTruth): number {
  return creep + slip * (driveTorque / 48) ** 8;
}
