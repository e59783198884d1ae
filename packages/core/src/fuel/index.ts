export { type BeforeManifold, beforeManifold } from './before-manifold.ts';
export { blendOf } from './blend.ts';
export {
  blowThroughCautions,
  blowThroughPressure,
  FLOATS_STAND,
  USUAL_BASE_PRESSURE,
} from './carburettor.ts';
export { usualConsumption } from './consumption.ts';
export { evaporationCooling } from './evaporation.ts';
export { airFlowOfFuel, fuelFlowOfAir, fuelFlowOfPower } from './flow.ts';
export {
  type EffectFigures,
  effectFigures,
  fuelEffect,
  isSameFuel,
  moreBeforeManifold,
  NO_EFFECT,
} from './fuel-effect.ts';
export { fuelNamed } from './fuel-named.ts';
export { fuelOfSheet, isFuelTold } from './fuel-of-sheet.ts';
export { GASOLINE } from './gasoline.ts';
export { heatingValueOf, latentHeatOf } from './heating-value.ts';
export { inductionOfSheet } from './induction-of-sheet.ts';
export {
  cycleTime,
  deadTimeAt,
  injectorCapacity,
  injectorDuty,
  injectorNeeded,
  injectorSizeFor,
  pressureAcross,
} from './injectors.ts';
export { USUAL_RATED_PRESSURE, USUAL_VOLTAGE } from './injectors-on-sheet.ts';
export { ignitionDelay } from './knock/ignition-delay.ts';
export { type GasTrace, knockIntegral } from './knock/knock-integral.ts';
export { peakPressure } from './knock/peak-pressure.ts';
export { retardCost } from './knock/retard-cost.ts';
export { sparkAllowed } from './knock/spark-allowed.ts';
export { type SparkFigures, sparkFigures } from './knock/spark-figures.ts';
export { usualLambda } from './lambda.ts';
export { FASTEST_IN_LINE, LINE_SIZES, lineFor, speedInLine } from './lines.ts';
export * from './model.ts';
export { NAMED_FUELS, type NamedFuel } from './named-fuels.ts';
export { PUMP_MARGIN, pumpCapacity, pumpNeeded, pumpPressure, voltageFactor } from './pumps.ts';
export { type Atoms, molarMassOf, stoichiometricOfAtoms } from './stoichiometry.ts';
export { SUBSTANCES, type Substance } from './substances.ts';
export { fuelSupplyOf } from './supply.ts';
