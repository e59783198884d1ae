export { chiSquareCdf, chiSquareQuantile } from './chi-square.ts';
export { choleskyOf, solveWith } from './cholesky.ts';
export { digamma, trigamma, trigammaInverse } from './digamma.ts';
export { extentOf } from './extent.ts';
export { fCdf, fQuantile } from './f-distribution.ts';
export { fingerprint, fingerprintOfCurves } from './fingerprint.ts';
export { gaussLegendre } from './gauss-legendre.ts';
export { firstNotBelow, interpolateLinear } from './interpolate.ts';
export { lag1Correlation } from './lag-1-correlation.ts';
export { type LeastSquaresFit, leastSquares } from './least-squares.ts';
export { localSlope, slopeOfRows } from './local-slope.ts';
export { logGamma } from './log-gamma.ts';
export { mean, sampleDeviation } from './mean.ts';
export {
  DEVIATION_FROM_MAD,
  median,
  medianAbsoluteDeviation,
  runningMedian,
  weightedMedian,
} from './median.ts';
export { noncentralTCdf } from './noncentral-t.ts';
export { normalCdf, normalQuantile } from './normal.ts';
export { fitPolynomial, type PolynomialFit, polynomialAt, polynomialSpreadAt } from './polynomial-fit.ts';
export { rootInBracket } from './root-in-bracket.ts';
export { type RowRun, runsOf } from './runs.ts';
export { scaleRule } from './scale-rule.ts';
export { normalSource } from './seeded-normals.ts';
export { selectQuantile } from './select-quantile.ts';
export { studentTCdf, studentTQuantile } from './student-t.ts';
