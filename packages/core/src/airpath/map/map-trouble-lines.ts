import { interpolateLinear, median } from '../../numeric/index.ts';
import type { Remark } from '../../remark/index.ts';
import type { MapPoint } from '../model.ts';
import { likelyUnit } from './flow-unit-factor.ts';
import { linesOf, type MapLine } from './map-line-groups.ts';
import { mapMessage } from './map-messages.ts';

/** What is wrong between the lines of a table: a line in another unit of flow, lines that cross. */
export function mapLinesTrouble(points: readonly MapPoint[]): Remark[] {
  const lines = linesOf(points);
  const mixed = lines.flatMap((line) => flowUnitTrouble(line, lines));
  return mixed.length > 0 ? mixed.slice(0, 1) : crossings(lines);
}

/** Both ends of a line must lie this much off those of the others, by about one factor, to be taken as another unit. */
const UNIT_FACTOR = 1.7;
const ONE_FACTOR = 1.4;

/** Flow over speed of both ends, against the median of the other lines: real lines move by a third over a map. */
function flowUnitTrouble(line: MapLine, lines: readonly MapLine[]): Remark[] {
  const others = lines.filter((other) => other !== line);
  if (others.length === 0) return [];
  const endsOf = ({ points, speedRpm }: MapLine): [number, number] => [
    points[0]!.flow / speedRpm,
    points.at(-1)!.flow / speedRpm,
  ];
  const [low, high] = endsOf(line);
  const lowFactor = low / median(others.map((other) => endsOf(other)[0]));
  const highFactor = high / median(others.map((other) => endsOf(other)[1]));
  const factor = Math.sqrt(lowFactor * highFactor);
  const isOne = Math.max(lowFactor / highFactor, highFactor / lowFactor) < ONE_FACTOR;
  const isOff = Math.max(factor, 1 / factor) > UNIT_FACTOR;
  return isOne && isOff ? [mapMessage.mixedFlowUnits(line.speedRpm, factor, likelyUnit(factor))] : [];
}

/** Scatter within which neighbouring points may lie the wrong way round. */
const CROSSING = 1.01;

function crossings(lines: readonly MapLine[]): Remark[] {
  return lines.slice(1).flatMap((high, place) => {
    const low = lines[place]!;
    const at = low.points.find((point) => {
      const above = pressureRatioAt(high, point.flow);
      return Number.isFinite(above) && above * CROSSING < point.pressureRatio;
    });
    if (at !== undefined) return [mapMessage.crossingLines(low.speedRpm, high.speedRpm, at)];
    // Lines without common flow: the faster must reach higher all the same.
    const top = topOf(low);
    return topOf(high).pressureRatio * CROSSING < top.pressureRatio && isWhole(high)
      ? [mapMessage.crossingLines(low.speedRpm, high.speedRpm, top)]
      : [];
  });
}

/** Pressure ratio on the straights between a line's points; of several at one flow the highest. */
function pressureRatioAt({ points }: MapLine, flow: number): number {
  const highest = new Map<number, number>();
  for (const point of points)
    highest.set(point.flow, Math.max(point.pressureRatio, highest.get(point.flow) ?? 0));
  const flows = [...highest.keys()];
  return interpolateLinear(flows, [...highest.values()], flow);
}

const topOf = ({ points }: MapLine): MapPoint =>
  points.reduce((best, point) => (point.pressureRatio > best.pressureRatio ? point : best));

/** Whether a line was measured up to its highest pressure ratio: a falling stretch near choke alone says nothing of its top. */
const isWhole = (line: MapLine): boolean => topOf(line) !== line.points[0];
