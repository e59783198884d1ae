import type { Fuel, FuelPump, FuelRail } from './model.ts';

/** Share of its flow that a pump loses for each volt less: 12 to 15 % from 13.5 to 12 V (common practice, no source). */
const LOST_PER_VOLT = 0.09;
/** Share of its flow that a pump told at one pressure loses for each bar more (common practice, no source). */
const LOST_PER_BAR = 0.08;
const BAR = 1e5;
/** What a pump should pass beyond what the engine takes (common practice, no source). */
export const PUMP_MARGIN = 0.2;

/**
 * What a pump passes at a pressure and at the voltage it gets, m³/s. Between its points straight; beyond the last along its last
 * stretch, below the first as at the first; of one point a usual fall above it.
 *
 * @param pressure  Pa that it pumps against, above open air: rail at rest and boost where that is followed
 * @example pumpCapacity({ ratedVoltage: 13.5, voltage: 12, points: [{ pressure: 3e5, flow: 7e-5 }], … }, 3e5) // 6.06e-5
 */
export function pumpCapacity({ points, voltage, ratedVoltage }: FuelPump, pressure: number): number {
  return flowAt(points, pressure) * voltageFactor(voltage, ratedVoltage);
}

/** By what a pump's flow changes with the voltage it gets. */
export const voltageFactor = (voltage: number, ratedVoltage: number): number =>
  Math.max(0, 1 + LOST_PER_VOLT * (voltage - ratedVoltage));

function flowAt(points: FuelPump['points'], pressure: number): number {
  const [first] = points;
  if (first === undefined) throw new Error('a pump without a point has no flow');
  if (pressure <= first.pressure) return first.flow;
  if (points.length === 1)
    return Math.max(0, first.flow * (1 - (LOST_PER_BAR * (pressure - first.pressure)) / BAR));
  const found = points.findIndex((point) => point.pressure >= pressure);
  const above = found === -1 ? points.length - 1 : found;
  const [low, high] = [points[above - 1]!, points[above]!];
  const slope = (high.flow - low.flow) / (high.pressure - low.pressure);
  return Math.max(0, low.flow + slope * (pressure - low.pressure));
}

/** Pa above open air that a pump works against: the rail at rest, and boost where the rail follows it. */
export const pumpPressure = ({ pressure, reference }: FuelRail, boost: number): number =>
  reference === 'manifold' ? pressure + boost : pressure;

/** What a pump should pass for a fuel flow, m³/s, its margin in it. */
export const pumpNeeded = (fuelFlow: number, fuel: Fuel): number =>
  ((1 + PUMP_MARGIN) * fuelFlow) / fuel.density;
