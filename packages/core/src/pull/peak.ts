import {
  fitPolynomial,
  type PolynomialFit,
  polynomialAt,
  polynomialSpreadAt,
} from '../numeric/polynomial-fit.ts';
import type { GriddedCurve, Peak } from './model.ts';

/** Range to either side of the highest node that the fit takes in. */
const REACH_RPM = 300;
const FEWEST_NODES = 5;
/** Neighbours of a settled point further away than this do not say where the top lies between them. */
const WIDEST_STEP_RPM = 500;

export interface PeakOptions {
  kindOfRows?: GriddedCurve['kindOfRows'];
  /** Rows behind each node: a node counts by them. Missing: all alike. */
  count?: ArrayLike<number>;
  /** Highest accepted speed, r/min, where a climbing curve is read; missing: the last node. */
  endRpm?: number;
}

/**
 * Top of a curve from a quadratic fitted by least squares to the nodes within 300 r/min of the highest (at least five), with
 * the standard deviation of its height and place from the scatter about the fit. The highest of many noisy figures would be
 * too high by about one deviation; the fit is not. Settled points too far apart for five are joined by the exact parabola
 * through the highest and its two neighbours.
 *
 * Where the curve is highest at the high-speed end, or the fit tops out beyond it, there is no peak: the figure at that end
 * is given and `stillClimbing` is true. A curve that falls from its first node on has its highest figure there; that is not
 * climbing. Nor is one that is flat about its top, whose fit has its own top far away or none: the fit is read where the
 * curve is highest. `null` when no node has a figure.
 */
export function fitPeak(x: ArrayLike<number>, y: ArrayLike<number>, options: PeakOptions = {}): Peak | null {
  const { kindOfRows = 'samples' } = options;
  const nodes = Array.from({ length: x.length }, (_, index) => ({
    x: x[index]!,
    y: y[index]!,
    weight: options.count?.[index] ?? 1,
  })).filter((node) => Number.isFinite(node.y));
  if (nodes.length === 0) return null;
  const top = nodes.reduce((best, node, index) => (node.y > nodes[best]!.y ? index : best), 0);
  const highest = nodes[top]!;
  const fit = fitAround(nodes, top, kindOfRows);

  if (top === nodes.length - 1) return climbing(highest, fit, kindOfRows, options.endRpm);
  if (top === 0) return asItStands(highest, kindOfRows === 'samples' ? fit : null);
  const place = fit === null ? null : topOf(fit);
  if (fit === null || place === null || place < nodes[0]!.x) return asItStands(highest, null);
  const last = nodes.at(-1)!;
  if (place > Math.max(last.x, options.endRpm ?? last.x) && last.x - highest.x <= REACH_RPM)
    return climbing(last, fit, kindOfRows, options.endRpm);
  if (Math.abs(place - highest.x) > reachOf(kindOfRows)) return asItStands(highest, fit);
  return {
    value: polynomialAt(fit, place),
    atRpm: place,
    valueSpread: polynomialSpreadAt(fit, place),
    atRpmSpread: placeSpread(fit),
    stillClimbing: false,
  };
}

interface Node {
  x: number;
  y: number;
  weight: number;
}

/** Least squares about the highest node, then about the top that gave: noise picks the node, the fit should not stand on it. */
function fitAround(
  nodes: readonly Node[],
  top: number,
  kind: GriddedCurve['kindOfRows'],
): PolynomialFit | null {
  const at = nodes[top]!.x;
  if (kind === 'points' && within(nodes, at).length < FEWEST_NODES) {
    const three = nodes.slice(Math.max(0, top - 1), top + 2);
    const joined = three.length === 3 && three.every((node) => Math.abs(node.x - at) <= WIDEST_STEP_RPM);
    return joined ? fitTo(three) : null;
  }
  const first = fitTo(nearest(nodes, at));
  const place = first === null ? null : topOf(first);
  if (place === null || Math.abs(place - at) > REACH_RPM) return first;
  if (place < nodes[0]!.x || place > nodes.at(-1)!.x) return first;
  return fitTo(nearest(nodes, place));
}

/** How far from the highest figure a fitted top can lie and still be the top of what was fitted. */
const reachOf = (kind: GriddedCurve['kindOfRows']): number =>
  kind === 'points' ? Math.max(REACH_RPM, WIDEST_STEP_RPM) : REACH_RPM;

const within = (nodes: readonly Node[], at: number): Node[] =>
  nodes.filter((node) => Math.abs(node.x - at) <= REACH_RPM);

function nearest(nodes: readonly Node[], at: number): Node[] {
  const near = within(nodes, at);
  if (near.length >= FEWEST_NODES) return near;
  return [...nodes].sort((a, b) => Math.abs(a.x - at) - Math.abs(b.x - at)).slice(0, FEWEST_NODES);
}

const fitTo = (nodes: readonly Node[]): PolynomialFit | null =>
  fitPolynomial(
    nodes.map((node) => node.x),
    nodes.map((node) => node.y),
    2,
    nodes.map((node) => node.weight),
  );

/** Where a fit has its top; `null` where it has none. */
function topOf({ centre, coefficients }: PolynomialFit): number | null {
  const [, slope = 0, curvature = 0] = coefficients;
  return curvature < 0 ? centre - slope / (2 * curvature) : null;
}

/** For samples the fit read at the window's end; a settled row stands for itself. */
function climbing(
  last: Node,
  fit: PolynomialFit | null,
  kind: GriddedCurve['kindOfRows'],
  endRpm = last.x,
): Peak {
  if (kind === 'points' || fit === null) return { ...asItStands(last, null), stillClimbing: true };
  return {
    value: polynomialAt(fit, endRpm),
    atRpm: endRpm,
    valueSpread: polynomialSpreadAt(fit, endRpm),
    atRpmSpread: null,
    stillClimbing: true,
  };
}

function asItStands(node: Node, fit: PolynomialFit | null): Peak {
  return {
    value: fit === null ? node.y : polynomialAt(fit, node.x),
    atRpm: node.x,
    valueSpread: fit === null ? null : polynomialSpreadAt(fit, node.x),
    atRpmSpread: null,
    stillClimbing: false,
  };
}

/** Standard deviation of the place -b/2c, by the propagation of the covariance of b and c. */
function placeSpread({ coefficients, covariance }: PolynomialFit): number | null {
  if (covariance === null) return null;
  const [, b = 0, c = 0] = coefficients;
  const bySlope = -1 / (2 * c);
  const byCurvature = b / (2 * c * c);
  const variance =
    bySlope ** 2 * covariance[1]![1]! +
    byCurvature ** 2 * covariance[2]![2]! +
    2 * bySlope * byCurvature * covariance[1]![2]!;
  return Math.sqrt(Math.max(0, variance));
}
