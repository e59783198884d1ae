export { airState } from './air-state.ts';
export { CORRECTIONS, correctionById, correctPower, correctTorque, undoCorrection } from './correction.ts';
export { dewPointFromVapourPressure } from './dew-point.ts';
export * from './model.ts';
export {
  densityOfMoistAir,
  dryPressureFromBarometer,
  humidityRatioFromVapourPressure,
  vapourPressureFromHumidityRatio,
} from './moist-air.ts';
export { saturationPressure } from './saturation-pressure.ts';
export { densityAltitude, standardAtmosphere } from './standard-atmosphere.ts';
export { vapourPressureFromHumidity } from './vapour-pressure.ts';
export { vapourPressureFromWetBulb, wetBulbFromVapourPressure } from './wet-bulb.ts';
