import { scaleLinear } from 'd3-scale';
import type { Box } from './columns.ts';
import { drawCutNumbers, drawCutShades } from './cut-shades.ts';
import type { ChartDescription, DrawSize, Scene, SceneNode, StackGeometry } from './model.ts';
import { drawNameRows } from './name-rows.ts';
import { drawPanel } from './panel-drawing.ts';
import type { DrawingLook } from './panel-frame.ts';
import { type Proportions, proportionsFor } from './proportions.ts';
import { runningNames } from './running-figure.ts';
import { drawHeads, speedPillSpan } from './running-heads.ts';
import { element, px, textAt } from './scene-node.ts';
import { layoutStack, type StackLayout } from './stack-layout.ts';
import { textWidth, wrapped } from './text-width.ts';
import { THEMES } from './theme.ts';
import { drawWindowLine } from './window-line.ts';

/**
 * A stack of panels that share one engine-speed axis, and where its panels lie (for a cursor). Nothing is computed but
 * places: every figure comes in with the description. On a width below 560 px, or 36 times the text, the names go in
 * rows on top.
 *
 * `hasCursor`: leaves room on top for what a cursor writes.
 *
 * @example drawStack(chart, { width: 860, height: 720, text: 13, theme: 'light', ground: true }).scene
 */
export function drawStack(
  chart: ChartDescription,
  size: DrawSize,
  hasCursor = true,
): { scene: Scene; geometry: StackGeometry } {
  const theme = THEMES[size.theme];
  const look: DrawingLook = {
    theme: size.theme,
    ground: theme.card,
    overlay: false,
    proportions: proportionsFor(size),
  };
  const { edge } = look.proportions;
  const frame = { left: edge, right: size.width - edge, top: edge, bottom: size.height - edge };
  const { nodes, geometry } = drawStackIn(chart, frame, look, hasCursor);
  const ground = size.ground ? [groundOf(size, theme.card)] : [];
  const scene = {
    width: size.width,
    height: size.height,
    nodes: [...ground, ...nodes],
    alternative: chart.alternative,
  };
  return { scene, geometry };
}

export const groundOf = (size: { width: number; height: number }, colour: string): SceneNode =>
  element('rect', { x: 0, y: 0, width: px(size.width), height: px(size.height), fill: colour });

/** The stack within a frame of a larger drawing. */
export function drawStackIn(
  chart: ChartDescription,
  frame: Box,
  look: DrawingLook,
  hasCursor: boolean,
): { nodes: SceneNode[]; geometry: StackGeometry } {
  const { proportions } = look;
  const theme = THEMES[look.theme];
  const layout = layoutStack(chart, frame, proportions, hasCursor);
  const { left, right, panels } = layout;
  const geometry: StackGeometry = {
    left,
    right,
    top: panels[0]?.top ?? frame.top,
    bottom: panels.at(-1)?.bottom ?? frame.bottom,
    xRange: chart.xRange,
    windowMiddle: chart.xWindow && !proportions.compact ? layout.windowMiddle : null,
    panels: panels.map(({ prepared, top, bottom, axis }) => ({
      id: prepared.panel.id,
      top,
      bottom,
      yRange: axis.range,
    })),
  };
  if (panels.every(({ prepared }) => prepared.reach === null && !prepared.panel.reach)) {
    return { nodes: drawNothing(frame, proportions, theme.softInk), geometry };
  }
  const { motion } = look;
  const heads = motion ? drawHeads(chart, layout, look, motion) : [];
  const pill = motion && heads.length > 0 ? speedPillSpan(chart, layout, proportions, motion) : null;
  const names = motion ? runningNames(chart, layout, motion) : layout.names;
  const nodes = [
    ...drawNameRows(names, frame.left, frame.top, proportions, look),
    ...windowNodes(chart, layout, look),
    ...panels.flatMap((laid) => drawCutShades(chart, layout, laid, theme)),
    ...panels.map((laid) => drawPanel(chart, layout, laid, look)),
    ...drawCutNumbers(chart, layout, proportions, theme),
    ...drawSpeedAxis(chart, layout, geometry.bottom, look, pill),
    ...heads,
  ];
  return { nodes, geometry };
}

function windowNodes(chart: ChartDescription, layout: StackLayout, look: DrawingLook): SceneNode[] {
  if (!chart.xWindow || look.proportions.compact) return [];
  const [low, high] = chart.xWindow.range;
  const [lowest, highest] = chart.xRange;
  if (low >= highest || high <= lowest) return [];
  const xAt = scaleLinear(chart.xRange, [layout.left, layout.right]).clamp(true);
  return drawWindowLine(
    chart.xWindow.text,
    [xAt(low), xAt(high)],
    { ...layout, goesOn: [low < lowest, high > highest] },
    look.proportions,
    THEMES[look.theme],
  );
}

function drawSpeedAxis(
  chart: ChartDescription,
  layout: StackLayout,
  bottom: number,
  look: DrawingLook,
  /** What covers the axis' figures from here to there: half a figure is worse than none. */
  covered: readonly [number, number] | null,
): SceneNode[] {
  const { text, narrow, compact, titleBelow } = look.proportions;
  const theme = THEMES[look.theme];
  const xAt = scaleLinear(chart.xRange, [layout.left, layout.right]);
  const baseline = bottom + 1.42 * text;
  const soft = { sizePx: text, face: 'sans', colour: theme.softInk } as const;
  const strong = { sizePx: text, face: 'sansStrong', colour: theme.ink } as const;
  const halfWidth = (index: number) => textWidth(layout.xTickTexts[index] ?? '', text, 'sans') / 2;
  const isFree = (x: number, index: number) =>
    covered === null || x + halfWidth(index) < covered[0] || x - halfWidth(index) > covered[1];
  const ticks = layout.xAxis.ticks.map((tick, index) => ({
    right: xAt(tick) + halfWidth(index),
    nodes: isFree(xAt(tick), index)
      ? [textAt(xAt(tick), baseline, layout.xTickTexts[index] ?? '', { ...soft, anchor: 'middle' })]
      : [],
  }));
  const figures = ticks.flatMap(({ nodes }) => nodes);
  const unitAt = (x: number, y: number) => (chart.xUnit === '' ? [] : [textAt(x, y, chart.xUnit, soft)]);
  const titleWidth = textWidth(chart.xTitle, text, 'sansStrong') + 0.5 * text;
  if (titleBelow) {
    const below = baseline + 1.45 * text;
    return [
      ...figures,
      textAt(layout.left, below, chart.xTitle, strong),
      ...unitAt(layout.left + titleWidth, below),
    ];
  }
  if (narrow && !compact) {
    // The unit at the axis' end is worth more than its last figure.
    const unitLeft = layout.frame.right - textWidth(chart.xUnit, text, 'sans');
    const free = ticks.filter(({ right }) => right < unitLeft - 0.5 * text);
    // What covers it says the unit itself.
    const unit = covered !== null && covered[1] > unitLeft ? [] : unitAt(unitLeft, baseline);
    return [...free.flatMap(({ nodes }) => nodes), ...unit];
  }
  const last = layout.xAxis.ticks.at(-1) ?? chart.xRange[1];
  const lastRight = xAt(last) + textWidth(layout.xTickTexts.at(-1) ?? '', text, 'sans') / 2;
  const x = Math.max(lastRight + 0.6 * text, Math.min(layout.labels.x, layout.right + 0.6 * text));
  const unitWidth = textWidth(chart.xUnit, text, 'sans');
  // The room was reckoned to a hair: a rounding must not cost the title.
  if (x + titleWidth + unitWidth > layout.frame.right + 0.5) return [...figures, ...unitAt(x, baseline)];
  return [...figures, textAt(x, baseline, chart.xTitle, strong), ...unitAt(x + titleWidth, baseline)];
}

function drawNothing(frame: Box, { text, row }: Proportions, colour: string): SceneNode[] {
  const lines = wrapped(
    'Nothing to draw: no curve has values in this range.',
    frame.right - frame.left - 2 * text,
    text,
    'sans',
  );
  const middle = (frame.top + frame.bottom) / 2 - ((lines.length - 1) * row) / 2;
  return lines.map((line, index) =>
    textAt((frame.left + frame.right) / 2, middle + index * row, line, {
      sizePx: text,
      face: 'sans',
      colour,
      anchor: 'middle',
    }),
  );
}
