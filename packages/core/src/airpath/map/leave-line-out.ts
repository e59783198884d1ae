import { accepted, type Result } from '../../remark/index.ts';
import type { CompressorMap, MapError } from '../model.ts';
import { fitMap } from './fit-map.ts';
import type { LineTrace } from './map-distance.ts';
import { linesOf, type MapLine } from './map-line-groups.ts';
import { mapMessage } from './map-messages.ts';
import { errorOf, offOf, type PointOff, traceOf } from './map-quality.ts';

/** How a map fitted without one of its lines meets that line. */
export interface LineLeftOut {
  speedRpm: number;
  /** An outer line is met by going on beyond what is measured, and is no peer's either. */
  position: 'inner' | 'outer';
  fit: MapError;
  /** Straight interpolation between the neighbouring lines at equal relative flow; `null` for an outer line. */
  straight: MapError | null;
}

export interface LinesLeftOut {
  lines: LineLeftOut[];
  /** Over all points of the inner lines, and of the outer two. */
  inner: { fit: MapError; straight: MapError };
  outer: { fit: MapError };
}

/**
 * Each line of a table of points left out in turn, and met by a fit of the others. What a map says of speeds between its lines is
 * worth as much as this says.
 *
 * @example leaveLineOut(map) // value.inner.fit.pressureRatioRms: 0.006
 */
export function leaveLineOut(map: CompressorMap): Result<LinesLeftOut> {
  const lines = map.form === 'points' ? linesOf(map.points) : [];
  if (lines.length < 3) return { ok: false, remarks: [mapMessage.tooFewLinesToLeaveOut(lines.length)] };
  const judged: (LineLeftOut & { offs: PointOff[]; straightOffs: PointOff[] })[] = [];
  for (const [place, line] of lines.entries()) {
    const others = fitMap({ ...map, points: lines.flatMap((other) => (other === line ? [] : other.points)) });
    if (!others.ok) return others;
    const offs = line.points.map((point) => offOf(traceOf(others.value, point.speedRpm), point));
    const below = lines[place - 1];
    const above = lines[place + 1];
    const isInner = below !== undefined && above !== undefined;
    const trace = isInner ? straightTrace(below, above, line.speedRpm) : null;
    const straightOffs = trace === null ? [] : line.points.map((point) => offOf(trace, point));
    judged.push({
      speedRpm: line.speedRpm,
      position: isInner ? 'inner' : 'outer',
      fit: errorOf(offs),
      straight: isInner ? errorOf(straightOffs) : null,
      offs,
      straightOffs,
    });
  }
  const of = (position: LineLeftOut['position']) => judged.filter((line) => line.position === position);
  return accepted({
    lines: judged.map(({ offs, straightOffs, ...line }) => line),
    inner: {
      fit: errorOf(of('inner').flatMap(({ offs }) => offs)),
      straight: errorOf(of('inner').flatMap(({ straightOffs }) => straightOffs)),
    },
    outer: { fit: errorOf(of('outer').flatMap(({ offs }) => offs)) },
  });
}

/** Both lines cut into equal parts of their own flow, and the parts joined by straights over speed. */
function straightTrace(below: MapLine, above: MapLine, speedRpm: number): LineTrace {
  const PARTS = 60;
  const share = (speedRpm - below.speedRpm) / (above.speedRpm - below.speedRpm);
  const between = (low: number, high: number): number => low + share * (high - low);
  const parts = Array.from({ length: PARTS + 1 }, (_, part) => {
    const low = alongLine(below, part / PARTS);
    const high = alongLine(above, part / PARTS);
    return {
      flow: between(low.flow, high.flow),
      pressureRatio: between(low.pressureRatio, high.pressureRatio),
      efficiency: between(low.efficiency, high.efficiency),
    };
  });
  return {
    flow: parts.map(({ flow }) => flow),
    pressureRatio: parts.map(({ pressureRatio }) => pressureRatio),
    efficiency: parts.map(({ efficiency }) => efficiency),
  };
}

/** At a share of the way from a line's least to its largest flow, on straights between its points. */
function alongLine({ points }: MapLine, share: number) {
  const first = points[0]!.flow;
  const flow = first + share * (points.at(-1)!.flow - first);
  const above = Math.max(
    1,
    points.findIndex((point) => point.flow >= flow),
  );
  const low = points[above - 1]!;
  const high = points[above] ?? low;
  const part = high.flow > low.flow ? Math.min(1, (flow - low.flow) / (high.flow - low.flow)) : 0;
  const between = (of: (point: typeof low) => number): number => of(low) + part * (of(high) - of(low));
  return {
    flow,
    pressureRatio: between(({ pressureRatio }) => pressureRatio),
    efficiency: between(({ efficiency }) => efficiency ?? Number.NaN),
  };
}
