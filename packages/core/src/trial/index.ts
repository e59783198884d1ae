export { answerTrial } from './answer-trial.ts';
export { thingsChanged } from './change-remarks.ts';
export { keptOnTheBrake } from './kept-on-the-brake.ts';
export * from './model.ts';
export { meanEffectivePressure, type SurveyFigures, surveyFigures } from './survey-figures.ts';
