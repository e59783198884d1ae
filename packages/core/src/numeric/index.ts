export { extentOf } from './extent.ts';
export { firstNotBelow, interpolateLinear } from './interpolate.ts';
export { localSlope, slopeOfRows } from './local-slope.ts';
export { mean, sampleDeviation } from './mean.ts';
export {
  DEVIATION_FROM_MAD,
  median,
  medianAbsoluteDeviation,
  runningMedian,
  weightedMedian,
} from './median.ts';
export { fitPolynomial, type PolynomialFit, polynomialAt, polynomialSpreadAt } from './polynomial-fit.ts';
export { rootInBracket } from './root-in-bracket.ts';
export { type RowRun, runsOf } from './runs.ts';
