import type { ChannelMeaning } from '@pullbook/core/pull';

/** Values no engine on a brake reaches, inside units. Set wide by judgement; no source. */
export interface PossibleRange {
  low: number;
  high: number;
  /** The pull stands on this channel: an import with impossible values in it is refused. */
  decisive: boolean;
}

const range = (low: number, high: number, decisive = false): PossibleRange => ({ low, high, decisive });

const TEMPERATURE = range(173.15, 2273.15);

/** What a channel can hold at all. Far wider than what is usual: only the impossible lies outside. */
export const POSSIBLE: Partial<Record<ChannelMeaning, PossibleRange>> = {
  engineSpeed: range(0, 30_000, true),
  torque: range(-20e3, 20e3, true),
  power: range(-20e6, 20e6, true),
  boost: range(-102e3, 2e6),
  manifoldPressure: range(0, 2e6),
  dischargePressure: range(-102e3, 2e6),
  lambda: range(0, 50),
  airFuelRatio: range(0, 500),
  fuelFlow: range(-0.01, 5),
  airFlow: range(-0.1, 20),
  fuelVolumeFlow: range(-1e-5, 0.01),
  airVolumeFlow: range(-0.1, 20),
  inletAirTemperature: TEMPERATURE,
  dischargeTemperature: TEMPERATURE,
  chargeTemperature: TEMPERATURE,
  oilTemperature: TEMPERATURE,
  coolantTemperature: TEMPERATURE,
  fuelTemperature: TEMPERATURE,
  exhaustTemperature: TEMPERATURE,
  oilPressure: range(-102e3, 5e6),
  fuelPressure: range(-102e3, 300e6),
  crankcasePressure: range(-102e3, 500e3),
  sparkAdvance: range(-2 * Math.PI, 2 * Math.PI),
  throttle: range(-0.2, 1.5),
  impellerSpeed: range(0, 400_000),
  barometer: range(30e3, 120e3),
  relativeHumidity: range(-0.05, 1.2),
  correctionFactor: range(0.5, 2),
  batteryVoltage: range(-60, 1000),
};
