/**
 * Kinds of quantity and the unit each is held in inside Pullbook.
 *
 * SI inside, with one exception written down in ARCHITECTURE.md: engine and shaft speed are held in r/min, since
 * every grid, window and crossover of the trade stands on whole r/min and equality of grid nodes must be exact.
 */
export type QuantityKind =
  | 'engineSpeed' // r/min
  | 'sweepRate' // r/min per second
  | 'torque' // N·m
  | 'power' // W
  | 'absolutePressure' // Pa
  | 'gaugePressure' // Pa above the ambient pressure of the moment
  | 'pressureDifference' // Pa between two places
  | 'temperature' // K
  | 'temperatureDifference' // K
  | 'massFlow' // kg/s
  | 'volumeFlow' // m³/s
  | 'length' // m
  | 'area' // m²
  | 'volume' // m³
  | 'mass' // kg
  | 'density' // kg/m³
  | 'speed' // m/s
  | 'momentOfInertia' // kg·m²
  | 'specificConsumption' // kg/J
  | 'angle' // rad
  | 'ratio' // 1
  | 'time' // s
  | 'voltage' // V
  | 'frequency' // Hz
  | 'springRate' // N/m
  | 'force'; // N

declare const brand: unique symbol;
type Brand<Name extends string> = number & { readonly [brand]: Name };

/** Absolute pressure, Pa. Never mixed up with a gauge pressure: the types do not fit each other. */
export type AbsolutePressure = Brand<'absolutePressure'>;
/** Pressure above ambient, Pa. */
export type GaugePressure = Brand<'gaugePressure'>;
/** Thermodynamic temperature, K. */
export type Temperature = Brand<'temperature'>;
/** Difference of two temperatures, K. */
export type TemperatureDifference = Brand<'temperatureDifference'>;

export const absolutePressure = (pascal: number): AbsolutePressure => pascal as AbsolutePressure;
export const gaugePressure = (pascal: number): GaugePressure => pascal as GaugePressure;
export const temperature = (kelvin: number): Temperature => kelvin as Temperature;
export const temperatureDifference = (kelvin: number): TemperatureDifference =>
  kelvin as TemperatureDifference;

/** Which people's units are shown. */
export type UnitSystem = 'us' | 'si';
/** The mark between whole and fraction, on entry and on show. */
export type DecimalMark = '.' | ',';

/** Where a value comes from. */
export type Origin =
  | 'measured'
  | 'data sheet'
  | 'read off a picture'
  | 'remembered'
  | 'assumed'
  | 'computed'
  | 'rule of thumb'
  | 'not stated';

/** What a figure of a table, a rule or a rule of thumb rests on. */
export interface Provenance {
  /** Title of the source, `common practice, no source`, `from memory`, or the formula it follows from. */
  source: string;
  kind: 'published' | 'common practice' | 'from memory' | 'derived';
}
