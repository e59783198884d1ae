import type { MapPoint } from '../model.ts';

/** The points of one speed, flow rising; measured speeds differ a little. */
export interface MapLine {
  /** r/min corrected, mean of its points */
  speedRpm: number;
  points: MapPoint[];
}

/** A step in speed larger than this share begins another line: measured lines wander by 0.3 %, and are at least 4 % apart. */
const SPEED_STEP = 0.012;

/** The lines of a map, speed rising. */
export function linesOf(points: readonly MapPoint[]): MapLine[] {
  const lines: MapPoint[][] = [];
  for (const point of points.toSorted((a, b) => a.speedRpm - b.speedRpm)) {
    const line = lines.at(-1);
    if (line !== undefined && point.speedRpm <= line.at(-1)!.speedRpm * (1 + SPEED_STEP)) line.push(point);
    else lines.push([point]);
  }
  return lines.map((line) => ({
    speedRpm: line.reduce((sum, { speedRpm }) => sum + speedRpm, 0) / line.length,
    points: line.toSorted((a, b) => a.flow - b.flow),
  }));
}
