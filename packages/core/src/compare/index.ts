export { compareCombinations } from './compare-combinations.ts';
export { crossoversOf } from './crossovers.ts';
export * from './model.ts';
export { standardText } from './one-standard.ts';
