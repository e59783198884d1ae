export { aloneCurve } from './alone-curve.ts';
export * from './model.ts';
export { type NearCandidate, nearPullsOf } from './near-pulls.ts';
export { powerByDisplacement, powerByDisplacementRemark } from './power-by-displacement.ts';
export { keptAnswer, reach } from './reach.ts';
export { type PartRunner, type ReachParts, reachInParts, reachPart } from './reach-in-parts.ts';
export { sheetWith } from './sheet-with.ts';
export { troubleOfTarget } from './trouble.ts';
export { USUAL_COSTS, usualParts } from './usual-parts.ts';
