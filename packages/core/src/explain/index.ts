export { boostPerSpeed } from './boost-and-slip.ts';
export { explain } from './explain.ts';
export { explainGain } from './explain-gain.ts';
export * from './model.ts';
export type { About, ExplainInput, Observation, State } from './observation.ts';
export { type Explained, observationsOf } from './observations-of.ts';
export { restsOnSpeedLine } from './rests-on-speed-line.ts';
export {
  type Matched,
  POWER_PARTS,
  type PowerPart,
  type SplitOfPower,
  splitOfPower,
} from './split-of-power.ts';
export { lineRunsAtTheTop, type SlopeWord, slopeWord, whyBoostMoved } from './why-boost-moved.ts';
