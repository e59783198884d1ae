import type { MapReference } from '../model.ts';

/**
 * Flow and speed as they would be at a map's reference state, so that one map serves any inlet air: the same tip Mach number and the same
 * flow coefficient. Textbook relations; the molar mass of moist air (2 % of water in the air: 0.4 % of flow) is not put in.
 */

/**
 * kg/s corrected to the reference, from the flow at an inlet of that state.
 *
 * @example correctedFlow(0.25, { pressure: 97_000, temperature: 305 }, { pressure: 100_000, temperature: 298 }) // 0.260 741
 */
export const correctedFlow = (flow: number, inlet: MapReference, reference: MapReference): number =>
  (flow * Math.sqrt(inlet.temperature / reference.temperature) * reference.pressure) / inlet.pressure;

/** kg/s at an inlet of that state, from the corrected flow: the former turned round. */
export const flowFromCorrected = (corrected: number, inlet: MapReference, reference: MapReference): number =>
  (corrected * Math.sqrt(reference.temperature / inlet.temperature) * inlet.pressure) / reference.pressure;

/** r/min corrected to the reference. @example correctedSpeed(60_000, { temperature: 305 }, { temperature: 298 }) // 59 307.5 */
export const correctedSpeed = (
  speedRpm: number,
  inlet: Pick<MapReference, 'temperature'>,
  reference: Pick<MapReference, 'temperature'>,
): number => speedRpm * Math.sqrt(reference.temperature / inlet.temperature);

/** r/min at an inlet of that temperature, from the corrected speed. */
export const speedFromCorrected = (
  correctedRpm: number,
  inlet: Pick<MapReference, 'temperature'>,
  reference: Pick<MapReference, 'temperature'>,
): number => correctedRpm * Math.sqrt(inlet.temperature / reference.temperature);
