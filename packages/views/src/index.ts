export { type CombinationPageInput, combinationPage } from './combination-page.ts';
export * from './model.ts';
export { type PullPageInput, pullPage } from './pull-page.ts';
export { type PullHead, pullRow } from './pull-row.ts';
export { plainText } from './sentence.ts';
export { stillDescription } from './still.ts';
export { trialCard } from './trial-card.ts';
export { trialPage } from './trial-page.ts';
