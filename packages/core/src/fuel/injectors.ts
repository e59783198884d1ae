import type { Fuel, FuelRail, Injectors } from './model.ts';

/** V at which dead times are told here. */
const DEAD_TIME_VOLTAGE = 13.5;
/** Dead time goes about with the square of what voltage lacks: 1.0 ms at 13.5 V is 1.27 ms at 12 V (common practice, no source). */
const DEAD_TIME_POWER = 2;

/** Pa across an injector: what the rail stands above the port it sprays into. Boost takes from a rail that does not rise with it. */
export const pressureAcross = ({ pressure, reference }: FuelRail, boost: number): number =>
  reference === 'manifold' ? pressure : pressure - boost;

/**
 * What one injector passes when open all the time, kg/s: the root of pressure across it and of density, as of any orifice. 0 where nothing is
 * across it.
 *
 * @example injectorCapacity({ ...told, ratedPressure: 3e5 }, sameFuel, 4e5) // 1.1547 times what it was told
 */
export function injectorCapacity(injectors: Injectors, fuel: Fuel, across: number): number {
  const { flow, ratedPressure, ratedDensity } = injectors;
  return flow * Math.sqrt((Math.max(0, across) / ratedPressure) * (fuel.density / ratedDensity));
}

/** Time of two turns of a four-stroke, s: an injector may open once in it. `cycleTime(6000)`: 0.020 */
export const cycleTime = (engineSpeedRpm: number): number => 120 / engineSpeedRpm;

/** Dead time at another voltage than the 13.5 V at which it is told, s. */
export const deadTimeAt = (deadTime: number, voltage: number): number =>
  deadTime * (DEAD_TIME_VOLTAGE / voltage) ** DEAD_TIME_POWER;

/**
 * Share of the time for which the injectors are held open, their dead time in it. Above 1: they cannot pass that fuel; infinite where nothing
 * is across them.
 *
 * @param fuelFlow  of the engine, kg/s
 * @param across    Pa, of `pressureAcross`
 */
export function injectorDuty({
  fuelFlow,
  injectors,
  fuel,
  across,
  engineSpeedRpm,
}: {
  fuelFlow: number;
  injectors: Injectors;
  fuel: Fuel;
  across: number;
  engineSpeedRpm: number;
}): number {
  const capacity = injectors.count * injectorCapacity(injectors, fuel, across);
  if (capacity === 0) return fuelFlow > 0 ? Number.POSITIVE_INFINITY : 0;
  return fuelFlow / capacity + (injectors.deadTime ?? 0) / cycleTime(engineSpeedRpm);
}

/**
 * What each injector must pass when open all the time, kg/s at the pressure it will have, so that it is open for the share `duty`.
 *
 * @example injectorNeeded({ fuelFlow: 0.0225, count: 8, duty: 0.8 }) // 0.003516
 */
export const injectorNeeded = ({
  fuelFlow,
  count,
  duty,
}: {
  fuelFlow: number;
  count: number;
  duty: number;
}): number => fuelFlow / (count * duty);

/**
 * What an injector must be told to pass, kg/s with a fluid of `ratedDensity` at `ratedPressure`, so that it passes `needed` of this fuel
 * with `across` on it: `injectorCapacity` the other way round.
 */
export const injectorSizeFor = (
  needed: number,
  {
    fuel,
    across,
    ratedPressure,
    ratedDensity,
  }: Pick<Injectors, 'ratedPressure' | 'ratedDensity'> & { fuel: Fuel; across: number },
): number => needed * Math.sqrt((ratedPressure / across) * (ratedDensity / fuel.density));
