import type { FittedMap, MapError, MapPoint, MapQuality } from '../model.ts';
import { distanceTo, type LineTrace } from './map-distance.ts';
import type { MapLine } from './map-line-groups.ts';
import { efficiencyOn, pressureRatioOn, speedLineAt } from './speed-line.ts';

/** How well a fitted map meets the points of these lines. */
export function qualityOf(map: FittedMap, lines: readonly MapLine[]): MapQuality {
  const judged = lines.map(({ speedRpm, points }) => ({
    speedRpm,
    offs: points.map((point) => offOf(traceOf(map, point.speedRpm), point)),
  }));
  return {
    ...errorOf(judged.flatMap(({ offs }) => offs)),
    lines: judged.map(({ speedRpm, offs }) => ({ speedRpm, ...errorOf(offs) })),
  };
}

/** How far one point lies off. */
export interface PointOff {
  distance: number;
  efficiency: number | null;
}

export function offOf(trace: LineTrace, point: MapPoint): PointOff {
  const { distance, efficiency } = distanceTo(trace, point);
  return { distance, efficiency: point.efficiency === null ? null : efficiency - point.efficiency };
}

/** Root mean squares of many. */
export function errorOf(offs: readonly PointOff[]): MapError {
  const efficiencies = offs.flatMap(({ efficiency }) => (efficiency === null ? [] : [efficiency]));
  return {
    points: offs.length,
    pressureRatioRms: rootMeanSquare(offs.map(({ distance }) => distance)),
    efficiencyRms: efficiencies.length === 0 ? null : rootMeanSquare(efficiencies),
  };
}

/** A line of a fitted map as a trace, dense towards choke where it bends, down to no pressure rise. */
export function traceOf(map: FittedMap, speedRpm: number): LineTrace {
  const STEPS = 160;
  const line = speedLineAt(map, speedRpm);
  const from = 0.05 * line.chokeFlow;
  const flow = Array.from(
    { length: STEPS + 1 },
    (_, step) => line.chokeFlow - (line.chokeFlow - from) * (1 - step / STEPS) ** 3,
  );
  return {
    flow: [...flow, line.chokeFlow],
    pressureRatio: [...flow.map((at) => pressureRatioOn(line, at)), 0],
    efficiency: [...flow.map((at) => efficiencyOn(line, at)), 0],
  };
}

const rootMeanSquare = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);
