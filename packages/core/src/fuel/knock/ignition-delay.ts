/** Pa of one standard atmosphere: the unit the correlation is written in. */
const ATMOSPHERE = 101_325;
/** s at an octane number of 100, 1 atm, without the temperature's term. */
const COEFFICIENT = 17.68e-3;
const OCTANE_EXPONENT = 3.402;
const PRESSURE_EXPONENT = 1.7;
/** K, activation temperature */
export const ACTIVATION_TEMPERATURE = 3800;

/** State of a gas that is about to light by itself. */
export interface GasState {
  /** Pa, absolute */
  pressure: number;
  /** K */
  temperature: number;
}

/**
 * s until a gasoline mixture held at a state lights by itself: `17.68 ms (ON / 100)^3.402 p^-1.7 exp(3800 K / T)`, p in atm (Douaud and Eyzat, SAE 780080, as
 * Heywood prints it; from memory). With p in bar its constant reads 18.08, in kgf/cm² 18.69: the same line. Octane of primary reference fuels; fitted to
 * 80 to 100, near stoichiometric. A two-stage lighting below some 800 K is not in it.
 *
 * @example ignitionDelay({ octane: 95, pressure: 40 * 101_325, temperature: 900 }) // 0.001914
 */
export function ignitionDelay({ octane, pressure, temperature }: GasState & { octane: number }): number {
  return (
    delayOfOctane(octane) *
    (pressure / ATMOSPHERE) ** -PRESSURE_EXPONENT *
    Math.exp(ACTIVATION_TEMPERATURE / temperature)
  );
}

/** 1/s, one over the delay, for many states of one fuel: the part of the octane number is worked out once. */
export const ignitionRateOf = (octane: number): ((pressure: number, temperature: number) => number) => {
  const rate = 1 / delayOfOctane(octane);
  return (pressure, temperature) =>
    rate *
    Math.exp(PRESSURE_EXPONENT * Math.log(pressure / ATMOSPHERE) - ACTIVATION_TEMPERATURE / temperature);
};

/** By what share a delay moves for a share of the octane number. */
export const DELAY_BY_OCTANE = OCTANE_EXPONENT;

const delayOfOctane = (octane: number): number => COEFFICIENT * (octane / 100) ** OCTANE_EXPONENT;
