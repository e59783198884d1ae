import { clipped, type ListedPoints, type Points } from './clip.ts';
import type { ChartDescription, ChartLine, ChartPanel, LineStyle } from './model.ts';
import { isSameStyle } from './palette.ts';

/** How far the lines of a stack have drawn themselves along its axis. The others, and all round them, are there. */
export interface StackMotion {
  /** As a value of the axis. */
  until: number;
  /** Ids of the lines that draw themselves; `all`: every one. */
  drawn: readonly string[] | 'all';
}

export const drawsItself = ({ id }: ChartLine, { drawn }: Pick<StackMotion, 'drawn'>): boolean =>
  drawn === 'all' || drawn.includes(id);

/**
 * From where to where the lines of a chart draw themselves: from the lowest speed that any of them has to the highest,
 * so that all panels keep step. `null`: none of them has a value in the shown range.
 */
export function drawnRange(
  chart: ChartDescription,
  drawn: StackMotion['drawn'],
): [low: number, high: number] | null {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const line of chart.panels.flatMap(({ lines }) => lines)) {
    if (!drawsItself(line, { drawn })) continue;
    const { x, y } = clipped(line.x, line.y, chart.xRange);
    for (let index = 0; index < x.length; index += 1) {
      if (!Number.isFinite(y[index])) continue;
      low = Math.min(low, x[index]!);
      high = Math.max(high, x[index]!);
    }
  }
  return low < high ? [low, high] : null;
}

/** What of a line or an edge has been drawn. */
export const drawnUntil = ({ x, y }: Points, { until }: StackMotion): ListedPoints =>
  clipped(Array.from(x), Array.from(y), [Number.NEGATIVE_INFINITY, until]);

/**
 * Whether what stands at x and belongs to the lines of a look is still to come: a peak, a name at a line's end, a band
 * with its line.
 */
export function isStillToCome(
  panel: ChartPanel,
  style: LineStyle,
  x: number,
  motion: StackMotion | undefined,
): boolean {
  return motion !== undefined && x > motion.until && isComing(panel, style, motion);
}

/** Whether lines of that look draw themselves in this panel. */
export const isComing = ({ lines }: ChartPanel, style: LineStyle, motion: StackMotion): boolean =>
  lines.some((line) => isSameStyle(line.style, style) && drawsItself(line, motion));
