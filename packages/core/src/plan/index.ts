export { type BaselineAtRisk, baselineGuard, type GuardQuestion } from './baseline-guard.ts';
export { beforeThePull, type StartAdvice } from './before-the-pull.ts';
export { cautionsOf } from './cautions.ts';
export type { DesignedPull } from './designed-pull.ts';
export * from './model.ts';
export { type PlannedStay, type PlanQuestion, type PullPlan, planPulls } from './plan-pulls.ts';
export { type Settling, pullsToSettle } from './pulls-to-settle.ts';
export { readGain, readOdds } from './read-question.ts';
export { type PlannedEngine, stopCriteria } from './stop-criteria.ts';
