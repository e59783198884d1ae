export { BUILT_IN_PRIOR, PRIOR_PROVENANCE, type PriorFigure } from './built-in-prior.ts';
export { historyFrom } from './history-from.ts';
export { inductionOf } from './induction-of.ts';
export * from './model.ts';
