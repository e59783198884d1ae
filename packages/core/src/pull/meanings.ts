import type { QuantityKind } from '../quantity/index.ts';
import type { ChannelMeaning } from './model.ts';

export interface MeaningEntry {
  label: string;
  kind: QuantityKind;
  /** What is usual at full load, inside unit; `null`: anything goes. From memory of the trade; only ever a note. */
  typical: [low: number, high: number] | null;
  decimals: { us: number; si: number };
}

/** What each meaning is called, its kind and how finely it is shown. */
export const MEANINGS: Record<ChannelMeaning, MeaningEntry> = {
  time: entry('Time', 'time', null, 2, 2),
  engineSpeed: entry('Engine speed', 'engineSpeed', [300, 12_000], 0, 0),
  torque: entry('Torque', 'torque', [20, 3_000], 1, 1),
  power: entry('Power', 'power', [5e3, 2e6], 1, 1),
  boost: entry('Boost', 'gaugePressure', [-20e3, 400e3], 1, 1),
  manifoldPressure: entry('Manifold pressure', 'absolutePressure', [70e3, 500e3], 1, 1),
  dischargePressure: entry('Discharge pressure', 'gaugePressure', [-10e3, 450e3], 1, 1),
  lambda: entry('Mixture, lambda', 'ratio', [0.6, 1.15], 3, 3),
  airFuelRatio: entry('Mixture, air to fuel', 'ratio', [4, 20], 2, 2),
  fuelFlow: entry('Fuel flow', 'massFlow', [5e-4, 0.25], 1, 1),
  fuelVolumeFlow: entry('Fuel flow, volume', 'volumeFlow', [7e-7, 3e-4], 2, 1),
  airFlow: entry('Air flow', 'massFlow', [0.01, 1.5], 1, 1),
  airVolumeFlow: entry('Air flow, volume', 'volumeFlow', [0.008, 1.3], 1, 1),
  inletAirTemperature: entry('Inlet air', 'temperature', [263, 333], 0, 0),
  dischargeTemperature: entry('Discharge air', 'temperature', [283, 523], 0, 0),
  chargeTemperature: entry('Charge', 'temperature', [263, 423], 0, 0),
  oilTemperature: entry('Oil', 'temperature', [313, 423], 0, 0),
  coolantTemperature: entry('Coolant', 'temperature', [313, 393], 0, 0),
  fuelTemperature: entry('Fuel temperature', 'temperature', [263, 333], 0, 0),
  exhaustTemperature: entry('Exhaust', 'temperature', [673, 1_173], 0, 0),
  oilPressure: entry('Oil pressure', 'gaugePressure', [130e3, 900e3], 1, 0),
  fuelPressure: entry('Fuel pressure', 'gaugePressure', [20e3, 1e6], 1, 0),
  crankcasePressure: entry('Crankcase pressure', 'gaugePressure', [-60e3, 20e3], 2, 2),
  sparkAdvance: entry('Spark advance', 'angle', [0, 0.9], 1, 1),
  throttle: entry('Throttle', 'ratio', [0, 1.05], 0, 0),
  impellerSpeed: entry('Impeller speed', 'engineSpeed', [5_000, 250_000], 0, 0),
  barometer: entry('Barometer', 'absolutePressure', [60e3, 108e3], 2, 2),
  relativeHumidity: entry('Relative humidity', 'ratio', [0, 1], 0, 0),
  correctionFactor: entry('Correction factor', 'ratio', [0.85, 1.25], 4, 4),
  batteryVoltage: entry('Battery', 'voltage', [11, 16.5], 1, 1),
  other: entry('Other', 'ratio', null, 2, 2),
};

function entry(
  label: string,
  kind: QuantityKind,
  typical: MeaningEntry['typical'],
  us: number,
  si: number,
): MeaningEntry {
  return { label, kind, typical, decimals: { us, si } };
}
