export {
  type Compression,
  compressionPower,
  isentropicEfficiency,
  isentropicTemperature,
} from './compression.ts';
export {
  DRY_AIR,
  enthalpyOf,
  entropyFunctionOf,
  gasConstantOf,
  heatRatioOf,
  type Mixture,
  mixtureOf,
  moistAir,
  specificHeatOf,
} from './mixture.ts';
export { type Gas, molarEnthalpy, molarHeatCapacity } from './nasa-polynomial.ts';
export { ARGON, CARBON_DIOXIDE, NITROGEN, OXYGEN, WATER_VAPOUR } from './species.ts';
