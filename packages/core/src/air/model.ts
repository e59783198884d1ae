import type { AbsolutePressure, Temperature } from '../quantity/index.ts';
import type { Said } from '../remark/index.ts';

/** How the moisture of the air was given. */
export type Humidity =
  | { route: 'relativeHumidity'; ratio: number }
  | { route: 'dewPoint'; temperature: Temperature }
  | { route: 'wetBulb'; temperature: Temperature }
  | { route: 'vapourPressure'; pressure: AbsolutePressure };

/** What was read of the air at the engine's inlet. */
export interface AirReading {
  /** Barometer, absolute, Pa: at the station, not reduced to sea level. */
  pressure: AbsolutePressure;
  temperature: Temperature;
  /** `null`: unknown; taken as dry and said so. */
  humidity: Humidity | null;
  /** Altitude of the cell above the sea, m; lets a barometer reduced to sea level be caught. */
  altitude: number | null;
}

/** The air as computed from a reading. All SI. */
export interface AirState {
  pressure: AbsolutePressure;
  temperature: Temperature;
  vapourPressure: AbsolutePressure;
  dryPressure: AbsolutePressure;
  relativeHumidity: number;
  /** K; `null` for dry air. */
  dewPoint: Temperature | null;
  /** kg water per kg dry air */
  humidityRatio: number;
  /** kg/m³ of the moist air */
  density: number;
  /** m in the standard atmosphere */
  densityAltitude: number;
}

export type CorrectionId = 'observed' | 'sae-j1349' | 'sae-j607' | 'iso-1585' | 'din-70020';

export interface CorrectionStandard {
  id: CorrectionId;
  /** As printed on a chart: `SAE J1349`. */
  name: string;
  /** One sentence: reference pressure, temperature, dry or total. */
  referenceState: string;
  /** One sentence on supercharged engines, shown beside any boosted figure. */
  supercharged: string;
  /** Factor that carries observed torque and power to the reference air, 1. */
  factor: (air: AirState) => number;
  /** Reasons why this air lies outside the standard; empty: inside. */
  outsideValidity: (air: AirState, factor: number) => Said[];
}
