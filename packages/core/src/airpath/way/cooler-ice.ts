/** J/kg to melt ice at 0 °C: 334 kJ/kg (common tables, from memory). */
const HEAT_OF_MELTING = 334_000;
/** J/(kg·K) of water near room temperature. */
const SPECIFIC_HEAT_OF_WATER = 4186;
/** K */
const MELTING_POINT = 273.15;

/**
 * Ice, kg, that the heat of a pull melts: heat, J, over what a kilogram takes to melt and to warm to the water's own temperature, K.
 * What pump and hoses bring in is left out. Water at or below 0 °C: melting alone.
 *
 * @example iceMelted(30_000 * 10, 273.15) // 0.898 kg: 30 kW for 10 s
 */
export function iceMelted(heat: number, waterTemperature: number): number {
  const warming = SPECIFIC_HEAT_OF_WATER * Math.max(0, waterTemperature - MELTING_POINT);
  return Math.max(0, heat) / (HEAT_OF_MELTING + warming);
}
