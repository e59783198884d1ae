export { boostPerSpeed } from './boost-and-slip.ts';
export { explain } from './explain.ts';
export { explainGain } from './explain-gain.ts';
export * from './model.ts';
export type { About, ExplainInput, Observation, State } from './observation.ts';
export { type Explained, observationsOf } from './observations-of.ts';
