import { clipped, type Points } from './clip.ts';
import type { ChartBand, ChartDescription, ChartLine, ChartMark, ChartPanel } from './model.ts';

/** A line as far as the shown range goes. */
export interface PreparedLine {
  line: ChartLine;
  points: Points;
  /** Where it ends on the right, `null`: nothing of it is in the range. */
  end: { x: number; y: number } | null;
}

export interface PreparedBand {
  band: ChartBand;
  low: Points;
  high: Points;
}

/** What of a panel lies in the shown range. */
export interface PreparedPanel {
  panel: ChartPanel;
  lines: PreparedLine[];
  bands: PreparedBand[];
  marks: ChartMark[];
  /** Lowest and highest of all that must be seen, `null`: nothing lies in the range. */
  reach: [low: number, high: number] | null;
}

/** Where a curve ends on the right. */
function endOf({ x, y }: Points): PreparedLine['end'] {
  let end = -1;
  for (let index = 0; index < x.length; index += 1) {
    if (Number.isFinite(y[index]) && (end < 0 || x[index]! >= x[end]!)) end = index;
  }
  return end < 0 ? null : { x: x[end]!, y: y[end]! };
}

export function preparedPanel(panel: ChartPanel, xRange: ChartDescription['xRange']): PreparedPanel {
  const lines = panel.lines.map((line) => {
    const points = clipped(line.x, line.y, xRange);
    return { line, points, end: endOf(points) };
  });
  const bands = panel.bands.map((band) => {
    // A tint needs both edges.
    const isWhole = (index: number) =>
      (band.low[index] ?? null) !== null && (band.high[index] ?? null) !== null;
    const edge = (heights: (number | null)[]) =>
      heights.map((height, index) => (isWhole(index) ? height : null));
    return {
      band,
      low: clipped(band.x, edge(band.low), xRange),
      high: clipped(band.x, edge(band.high), xRange),
    };
  });
  const marks = panel.marks.filter(({ x }) => x >= xRange[0] && x <= xRange[1]);
  const heights = [
    ...lines.map(({ points }) => points.y),
    ...bands.flatMap(({ low, high }) => [low.y, high.y]),
    marks.map(({ y }) => y),
  ];
  return { panel, lines, bands, marks, reach: reachOf(heights) };
}

function reachOf(heights: ArrayLike<number>[]): PreparedPanel['reach'] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const curve of heights) {
    for (let index = 0; index < curve.length; index += 1) {
      const height = curve[index]!;
      if (height < low) low = height;
      if (height > high) high = height;
    }
  }
  return low <= high ? [low, high] : null;
}
