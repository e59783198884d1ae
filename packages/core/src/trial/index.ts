export { answerTrial } from './answer-trial.ts';
export { unlikeConditions } from './badge-of-likeness.ts';
export { badgesOf } from './badges.ts';
export { thingsChanged } from './change-remarks.ts';
export { keptOnTheBrake } from './kept-on-the-brake.ts';
export * from './model.ts';
export { abortedCounted } from './pull-remarks.ts';
export { checkedRunningOrder, RUNNING_ORDER_LIMITS } from './running-order.ts';
export { meanEffectivePressure, type SurveyFigures, surveyFigures } from './survey-figures.ts';
