import { ignitionRateOf } from './ignition-delay.ts';

/** A gas over time; places belong together. */
export interface GasTrace {
  /** s, not falling; a jump of state is the same time twice */
  time: ArrayLike<number>;
  /** Pa, absolute */
  pressure: ArrayLike<number>;
  /** K */
  temperature: ArrayLike<number>;
  /** How many places count; missing: all. */
  places?: number;
}

/**
 * How far a gas has come on its way to lighting by itself: the integral of dt over the delay at each state (Livengood and Wu 1955, from memory). 1: it
 * lights. Between places the rate is taken as straight.
 *
 * @example knockIntegral({ time: [0, 1e-3], pressure: [4e6, 4e6], temperature: [900, 900] }, 95) // 0.51
 */
export function knockIntegral(
  { time, pressure, temperature, places = time.length }: GasTrace,
  octane: number,
): number {
  const rateAt = ignitionRateOf(octane);
  let sum = 0;
  let before = rateAt(pressure[0]!, temperature[0]!);
  for (let place = 1; place < places; place++) {
    const rate = rateAt(pressure[place]!, temperature[place]!);
    sum += ((before + rate) / 2) * (time[place]! - time[place - 1]!);
    before = rate;
  }
  return sum;
}
