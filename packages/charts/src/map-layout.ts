import { formatNumber } from '@pullbook/core/quantity';
import { type Axis, roundTicks } from './axis.ts';
import { clipped, type ListedPoints } from './clip.ts';
import type { Box } from './columns.ts';
import type { MapDescription } from './model.ts';
import { type NameRows, nameRows, nameRowsHeight } from './name-rows.ts';
import type { Proportions } from './proportions.ts';
import { type StraightScale, straightScale } from './straight-scale.ts';
import { textWidth } from './text-width.ts';

export interface MapLayout {
  frame: Box;
  plot: Box;
  names: NameRows;
  xAxis: Axis;
  yAxis: Axis;
  xTexts: string[];
  yTexts: string[];
  xAt: StraightScale;
  yAt: StraightScale;
}

/** Where the parts of a map go: the plot fills what the axes' words leave. */
export function layoutMap(map: MapDescription, frame: Box, proportions: Proportions): MapLayout {
  const { text, title, narrow, compact } = proportions;
  const labelled = map.operating.map(({ key, name, style }) => ({ style, label: { key, name } }));
  const onTop = narrow && !compact ? labelled : [];
  const names = nameRows(onTop, frame.right - frame.left, proportions);
  const top = frame.top + nameRowsHeight(names, proportions) + title;
  // The figures of the axis, and its words in a row of their own: they are longer than a stack's.
  const bottom = Math.max(top + text, frame.bottom - (compact ? 1.75 : 3.45) * text);
  const textsOf = ({ ticks, decimals }: Axis) =>
    ticks.map((tick) => formatNumber(tick, decimals, map.decimalMark, { thousands: true }));
  const yAxis = roundTicks(map.yRange, bottom - top, 2.2 * text);
  const yTexts = textsOf(yAxis);
  const widest = Math.max(0, ...yTexts.map((one) => textWidth(one, text, 'sans')));
  const widestX = Math.max(...map.xRange.map((edge) => textWidth(edge.toFixed(2), text, 'sans')));
  const left = frame.left + Math.max(widest + 0.6 * text, widestX / 2);
  const right = Math.max(left + text, frame.right - widestX / 2);
  const xAxis = roundTicks(map.xRange, right - left, widestX + 1.6 * text);
  return {
    frame,
    plot: { left, right, top, bottom },
    names,
    xAxis,
    yAxis,
    xTexts: textsOf(xAxis),
    yTexts,
    xAt: straightScale(map.xRange, [left, right]),
    yAt: straightScale(map.yRange, [bottom, top]),
  };
}

/** A line of the map in pixels, as far as it lies in the plot. */
export function inPlot(
  { x, y }: { x: readonly (number | null)[]; y: readonly (number | null)[] },
  map: Pick<MapDescription, 'xRange' | 'yRange'>,
  { xAt, yAt }: Pick<MapLayout, 'xAt' | 'yAt'>,
): ListedPoints {
  const along = clipped(
    x.map((value) => value ?? Number.NaN),
    y,
    map.xRange,
  );
  const { x: heights, y: flows } = clipped(along.y, along.x, map.yRange);
  return { x: flows.map(xAt), y: heights.map(yAt) };
}
