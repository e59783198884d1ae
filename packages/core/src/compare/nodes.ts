import { extentOf } from '../numeric/extent.ts';
import { type ChannelMeaning, type GriddedCurve, pointsAt } from '../pull/index.ts';

/** Spacing of the comparison's nodes where settled points lie at no common spacing, r/min. */
const POINTS_WIDTH_RPM = 100;

/**
 * Width all curves can be compared at: the widest bins of all. Settled points count as 100 r/min, or 50 where they are that
 * close; points alone that all lie on whole multiples of one spacing keep it.
 */
export function commonWidthRpm(curves: readonly GriddedCurve[]): number {
  const widths = curves.filter((curve) => curve.kindOfRows === 'samples').map((curve) => curve.binWidthRpm);
  const points = curves.filter((curve) => curve.kindOfRows === 'points');
  if (points.length === 0) return Math.max(...widths);
  const spacing = Math.min(...points.map((curve) => curve.binWidthRpm));
  if (widths.length === 0 && spacing >= 50 && points.every((curve) => liesOn(curve, spacing))) return spacing;
  return Math.max(spacing <= 50 ? 50 : POINTS_WIDTH_RPM, ...widths);
}

/** Whole multiples of the width from the lowest to the highest speed that any curve has a figure of power for. */
export function commonNodesRpm(curves: readonly GriddedCurve[], width: number): Float64Array {
  const reached = curves.flatMap((curve) => {
    const power = curve.channels.get('power')!;
    return Array.from(curve.engineSpeedRpm).filter((_, node) => Number.isFinite(power[node]!));
  });
  const [low, high] = extentOf(reached);
  const [first, last] = [Math.ceil(low / width), Math.floor(high / width)];
  return Float64Array.from({ length: Math.max(0, last - first + 1) }, (_, node) => (first + node) * width);
}

/** A channel at the nodes: the bin itself, or between settled rows at most 500 r/min apart; NaN elsewhere. */
export function atNodes(curve: GriddedCurve, meaning: ChannelMeaning, nodesRpm: Float64Array): Float64Array {
  if (curve.kindOfRows === 'points') return pointsAt(curve, meaning, nodesRpm);
  const values = curve.channels.get(meaning);
  const first = curve.engineSpeedRpm[0] ?? 0;
  return nodesRpm.map((speed) => values?.[Math.round((speed - first) / curve.binWidthRpm)] ?? Number.NaN);
}

function liesOn(curve: GriddedCurve, spacing: number): boolean {
  return curve.engineSpeedRpm.every(
    (speed) => Math.abs(speed - spacing * Math.round(speed / spacing)) <= 0.5,
  );
}
