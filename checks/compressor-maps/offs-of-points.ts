import {
  efficiencyOn,
  type FittedMap,
  type MapPoint,
  pressureRatioOn,
  speedLineAt,
} from '@pullbook/core/airpath';

/** Root mean square over points of the shortest distance to the map's line of their speed, in shares of flow and pressure ratio; by trying many flows. */
export const offsOf = (map: FittedMap, points: readonly MapPoint[]): number =>
  rms(points.map((point) => nearest(map, point).distance));

/** The same of the efficiency at the nearest place. */
export const efficiencyOffsOf = (map: FittedMap, points: readonly MapPoint[]): number =>
  rms(points.map((point) => nearest(map, point).efficiency - point.efficiency!));

function nearest(map: FittedMap, point: MapPoint): { distance: number; efficiency: number } {
  const TRIES = 4000;
  const line = speedLineAt(map, point.speedRpm);
  let best = { distance: Number.POSITIVE_INFINITY, efficiency: Number.NaN };
  for (let tried = 1; tried <= TRIES; tried++) {
    const flow = (line.chokeFlow * tried) / TRIES;
    const ratio = pressureRatioOn(line, flow);
    // At choke the line stands vertical: any lower pressure ratio is on it.
    const below = tried === TRIES ? Math.min(ratio, point.pressureRatio) : ratio;
    const distance = Math.hypot(flow / point.flow - 1, below / point.pressureRatio - 1);
    if (distance < best.distance) best = { distance, efficiency: efficiencyOn(line, flow) };
  }
  return best;
}

const rms = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);
