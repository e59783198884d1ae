export { atAnotherRatio } from './another-ratio.ts';
export { assumedBesideFit } from './assumed-beside-fit.ts';
export { boostedPullOf } from './boosted-pull.ts';
export { fitMatch, fitTogether } from './fit-match.ts';
export * from './model.ts';
export { type ForetoldFigure, highestOf, predictedCurve } from './predicted-curve.ts';
export { scaleBaseline, type ToScale } from './scale-baseline.ts';
export { asAnotherSetUp, fittedInput, withFit } from './with-fit.ts';
