export { audienceWords, heldBack, heldBackInBundle } from './audience.ts';
export { shownBadges } from './badges.ts';
export { type CombinationPageInput, combinationPage } from './combination-page.ts';
export { momentText } from './date.ts';
export { findingGroups } from './findings.ts';
export * from './model.ts';
export { type PlanPage, type PlanPageInput, planPage, stopLines } from './plan-page.ts';
export type { PlannedRow } from './planned-pulls.ts';
export {
  type PredictionLedger,
  type PredictionMeasured,
  predictionLedger,
  type ShownPrediction,
  type TrialPredictions,
} from './predictions.ts';
export type { Signature } from './publish/picture.ts';
export { type PullPageInput, pullPage } from './pull-page.ts';
export { type ListView, listView, type PullHead, pullRow } from './pull-row.ts';
export { type PullSheet, pullSheetHtml } from './pull-sheet.ts';
export { pullSheet } from './pull-sheet-of-plan.ts';
export { PAPERS, type Paper } from './pull-sheet-style.ts';
export { MOST_PANELS, recordedChannels, recordedPage } from './recorded-page.ts';
export { type PriorRow, priorRows, shareText } from './scatter-prior.ts';
export { comparisonSentence, plainText } from './sentence.ts';
export { type ShopFiguresPage, shopFiguresPage } from './shop-figures.ts';
export { trialCard } from './trial-card.ts';
export { trialPage } from './trial-page.ts';
export { comparisonVerdictLine } from './verdict-line.ts';
export { shownExplanation } from './why.ts';
