export { compareCombinations } from './compare-combinations.ts';
export { type CountedPull, countedPulls } from './condition.ts';
export { isOfParts } from './conditions-of-parts.ts';
export { startTemperature } from './conditions-of-temperature.ts';
export * from './model.ts';
export { standardText } from './one-standard.ts';
export { HOURS_A_PULL, pullArraysOf } from './pull-arrays.ts';
