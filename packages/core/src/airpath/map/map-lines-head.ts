import { leastSquares } from '../../numeric/index.ts';
import { ISENTROPIC_EXPONENT } from './map-gas.ts';
import {
  COEFFICIENTS,
  type LineTerms,
  type MachSpan,
  machPlace,
  riseOfHead,
  TERMS,
  termsAt,
  termsOfPlace,
} from './map-lines-model.ts';

/** A point in dimensionless terms. */
export interface PlainPoint {
  mach: number;
  /** Flow over (density × speed of sound × exit diameter²). */
  flow: number;
  /** Isentropic rise of temperature over inlet temperature. */
  rise: number;
  efficiency: number | null;
}

/** Share by which a point is expected to lie off its line, in flow or pressure ratio. */
const EXPECTED_SCATTER = 0.007;
/** Step of the search over what is expected: a thousandth of it is the accuracy. */
const SEARCH_STEP = 0.03;

/** Coefficients of the lines' terms that meet the points best, each kept near what is expected of it. */
export function fitHead(points: readonly PlainPoint[], span: MachSpan): number[] {
  const priors = TERMS.flatMap(({ expected, spread }) =>
    spread.map((deviation, power) => ({ expected: power === 0 ? expected : 0, deviation })),
  );
  const start = priors.map(({ expected }) => expected);
  placeStart(start, points, span);
  const places = points.map(({ mach }) => machPlace(span, mach));
  const residualsWith =
    (ofPoint: (off: number) => number) =>
    (coefficients: readonly number[]): Float64Array => {
      const out = new Float64Array(points.length + COEFFICIENTS);
      points.forEach((point, row) => {
        out[row] = ofPoint(offLine(termsOfPlace(coefficients, places[row]!), point) / EXPECTED_SCATTER);
      });
      priors.forEach(({ expected, deviation }, place) => {
        out[points.length + place] = (coefficients[place]! - expected) / deviation;
      });
      return out;
    };
  const steps = priors.map(({ deviation }) => SEARCH_STEP * deviation);
  const plain = residualsWith((off) => off);
  const usual = leastSquares(plain, start, steps);
  // From a usual shape the search may not find a line that stands nearly vertical, as of vaned diffusers.
  const isPoor = usual.squares > POOR ** 2 * points.length;
  const steep = isPoor ? leastSquares(plain, steepStart(start), steps) : usual;
  const fit = (steep.squares < usual.squares ? steep : usual).at;
  const isFar = plain(fit).some((off, row) => row < points.length && Math.abs(off) > FAR_OFF);
  if (!isFar) return fit;
  // A wrong point has bent the fit already, so that it is begun from the usual shape as well.
  const tried = [fit, start].map((from) => leastSquares(residualsWith(softened), from, steps));
  return tried.reduce((best, one) => (one.squares < best.squares ? one : best)).at;
}

/** Standard deviations a point beyond which another start is tried. */
const POOR = 1.5;

function steepStart(start: readonly number[]): number[] {
  const steep = [...start];
  for (const name of ['flowExponent', 'headExponent'] as const) {
    const term = TERMS.findIndex((one) => one.name === name);
    const place = TERMS.slice(0, term).reduce((sum, { spread }) => sum + spread.length, 0);
    steep[place]! += 1.2;
  }
  return steep;
}

/** Standard deviations beyond which a point has less of a say. */
const FAR_OFF = 5;

/** A residual that hardly grows when it is far off (a Cauchy distribution's): one wrong point must not bend all lines. */
function softened(residual: number): number {
  const share = residual / FAR_OFF;
  return share === 0 ? 0 : residual * Math.sqrt(Math.log1p(share * share) / (share * share));
}

/** Choke a little beyond the largest flow of the points, head at their highest. */
function placeStart(start: number[], points: readonly PlainPoint[], span: MachSpan): void {
  const unit = termsAt(start, span, (span.low + span.high) / 2);
  const middle = (span.low + span.high) / 2;
  const largest = Math.max(...points.map(({ flow, mach }) => flow / mach));
  start[0] = Math.log((1.08 * largest * middle) / unit.chokeFlow);
  const headPlace = TERMS[0]!.spread.length + TERMS[1]!.spread.length;
  start[headPlace] = Math.log(Math.max(...points.map(({ rise, mach }) => rise / riseOfHead(1, mach))));
}

/**
 * How far a point lies off its line, in shares of flow and pressure ratio: the line's equation over the length of its gradient, which is the distance to
 * first order, on either side and also beyond choke.
 */
export function offLine(terms: LineTerms, { mach, flow, rise }: PlainPoint): number {
  const { chokeFlow, topFlow, head, flowExponent, headExponent, droop } = terms;
  const y = Math.max(rise, 1e-9) / riseOfHead(head, mach);
  // How y changes for a relative change of pressure ratio.
  const yOfPressure = (ISENTROPIC_EXPONENT * (1 + rise)) / riseOfHead(head, mach);
  if (flow <= topFlow) {
    const u = (topFlow - flow) / topFlow;
    const byFlow = (2 * droop * u * flow) / topFlow;
    return (y - (1 - droop * u * u)) / lengthOf(yOfPressure, byFlow);
  }
  const x = (flow - topFlow) / (chokeFlow - topFlow);
  const byFlow = (flowExponent * x ** (flowExponent - 1) * flow) / (chokeFlow - topFlow);
  const byPressure = headExponent * y ** (headExponent - 1) * yOfPressure;
  return (x ** flowExponent + y ** headExponent - 1) / lengthOf(byFlow, byPressure);
}

/** The standard library's own takes five times as long. */
const lengthOf = (x: number, y: number): number => Math.sqrt(x * x + y * y);
