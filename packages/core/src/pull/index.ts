export { acceptanceWindow, type FoundWindow, type WindowOptions } from './acceptance-window.ts';
export { acceptedRows } from './accepted-rows.ts';
export { audienceOn, isOpen, OPEN_AUDIENCE } from './audience.ts';
export { averageOver } from './average.ts';
export { pointsAt, WIDEST_JOINED_STEP_RPM } from './between-rows.ts';
export { boostOfPull, reachesBoost } from './boost-of-pull.ts';
export {
  CALIBRATION_HOLDS_DAYS,
  type CalibrationOnDay,
  calibrationOn,
  calibrationText,
} from './calibration.ts';
export {
  calibrationsBehind,
  cellRemarks,
  dayOfPull,
  measuresTorque,
  measuresWeather,
} from './cell-remarks.ts';
export { channelOf } from './channels.ts';
export { carriedFactor, correctionOf } from './correction.ts';
export { gridCurve } from './grid-curve.ts';
export { kindOfRows } from './kind-of-rows.ts';
export { MEANINGS, type MeaningEntry } from './meanings.ts';
export * from './model.ts';
export { fitPeak, type PeakOptions } from './peak.ts';
export { defaultRecipe } from './recipe.ts';
export { cellNamed, type ShopReading, SILENT_SHOP } from './shop-reading.ts';
export { type FoundSpike, findSpikes, type SpikeOptions } from './spikes.ts';
export { torqueOfRows } from './torque-and-power.ts';
export { canBeLate, lagsInForce, PLAIN_TREATMENT, recipeFor } from './treatment.ts';
export { type PullViewer, viewPull } from './view-pull.ts';
export { weatherOfPull } from './weather-of-pull.ts';
export { lagFigure } from './wording.ts';
