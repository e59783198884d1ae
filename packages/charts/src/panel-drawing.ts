import { heightAt, type Points } from './clip.ts';
import { coveredColumns } from './columns.ts';
import { drawDots } from './dots.ts';
import { drawEndLabels, type LabelPlace } from './end-labels.ts';
import { endMark } from './end-mark.ts';
import type { ChartDescription, ChartLine, SceneNode } from './model.ts';
import { drawnStyle, isSameStyle } from './palette.ts';
import { type DrawingLook, panelFrame } from './panel-frame.ts';
import { drawPanelRules } from './panel-rules.ts';
import { bandPath, linePath } from './path.ts';
import { drawMarks, type MarkedPoint } from './peak-marks.ts';
import type { PreparedLine } from './prepared.ts';
import type { Proportions } from './proportions.ts';
import { isCrowded, reducedToColumns } from './reduce.ts';
import { element, group, straight, strokedPath, textAt } from './scene-node.ts';
import type { LaidPanel, StackLayout } from './stack-layout.ts';
import { drawnUntil, drawsItself, isComing, isStillToCome } from './stack-motion.ts';
import { type StraightScale, straightScale } from './straight-scale.ts';
import { THEMES } from './theme.ts';
import { drawWindowRules } from './window-line.ts';

/** How strong each weight is drawn. */
const WEIGHTS = {
  rejected: { opacity: 0.4, order: 0 },
  pull: { opacity: 0.75, order: 1 },
  mean: { opacity: 1, order: 2 },
} as const;

/** How strongly a layer of a whole is filled: told apart without colour too. */
const LAYER_OPACITY = { strong: 0.3, middle: 0.26, faint: 0.1 } as const;

/** How much wider than a line its edging over a film is. */
const OVERLAY_EDGING = 2;

export function drawPanel(
  chart: ChartDescription,
  layout: StackLayout,
  laid: LaidPanel,
  look: DrawingLook,
): SceneNode {
  const { proportions, ground, motion } = look;
  const { text, hairline, meanLine, pullLine, mark } = proportions;
  const theme = THEMES[look.theme];
  const { prepared, top, bottom, axis } = laid;
  const { left, right } = layout;
  const xAt = straightScale(chart.xRange, [left, right]);
  const yAt = straightScale(axis.range, [bottom, top]);
  const inPixels = (points: Points): Points => ({ x: scaled(points.x, xAt), y: scaled(points.y, yAt) });
  const drawn = prepared.lines
    .map((one) => ({ ...one, pixels: inPixels(one.points) }))
    .sort((one, other) => WEIGHTS[one.line.weight].order - WEIGHTS[other.line.weight].order);

  const { titles, grid, ticks } = panelFrame(chart, layout, laid, look);
  if (prepared.reach === null && prepared.panel.reach) return group([...titles, ...grid, ...ticks]);
  if (prepared.reach === null) {
    const look = { sizePx: text, face: 'sans', colour: theme.softInk, anchor: 'middle' } as const;
    const middle = (top + bottom) / 2 + 0.36 * text;
    return group([...titles, ...grid, textAt((left + right) / 2, middle, 'No values in this range', look)]);
  }

  const zero = prepared.panel.zeroLine
    ? [straight(left, yAt(0), right, yAt(0), { colour: theme.softInk, widthPx: hairline })]
    : [];
  const rules = (chart.xWindow?.range ?? [])
    .filter((edge) => edge > chart.xRange[0] && edge < chart.xRange[1])
    .map((edge) => xAt(edge));
  const windowRules = drawWindowRules(rules, laid, proportions, theme);
  const edges = prepared.bands.map(({ band, low, high }) => ({
    band,
    low: inPixels(low),
    high: inPixels(high),
  }));
  const bands = prepared.bands.map(({ band, low, high }, index) =>
    element('path', {
      d:
        motion && isComing(prepared.panel, band.style, motion)
          ? bandPath(inPixels(drawnUntil(low, motion)), inPixels(drawnUntil(high, motion)))
          : bandPath(edges[index]!.low, edges[index]!.high),
      fill: drawnStyle(band.style, look.theme).colour,
      'fill-opacity': band.layer ? LAYER_OPACITY[band.layer.fill] : 0.15,
    }),
  );
  // Over a film every mean is edged in the ground that its contrast was reckoned against; under all lines, to cut none.
  const edgings: SceneNode[] = [];
  const lines = drawn.flatMap(({ line, points, pixels: whole }) => {
    const pixels = motion && drawsItself(line, motion) ? inPixels(drawnUntil(points, motion)) : whole;
    const { colour, dash } = drawnStyle(line.style, look.theme);
    const isMean = line.weight === 'mean';
    const widthPx = isMean ? meanLine : pullLine;
    const shown = isCrowded(pixels, right - left) ? reducedToColumns(pixels) : pixels;
    const path = linePath(shown, meanLine);
    if (look.overlay && isMean)
      edgings.push(strokedPath(path, { colour: ground, widthPx: OVERLAY_EDGING * meanLine }));
    const stroke = strokedPath(path, {
      colour,
      widthPx,
      ...(isMean ? { dash } : {}),
      opacity: WEIGHTS[line.weight].opacity,
    });
    return line.dotted ? [stroke, ...drawDots(pixels, { colour, ground, text })] : [stroke];
  });

  const markedPoints = prepared.marks.map((one): MarkedPoint => {
    const x = xAt(one.x);
    return {
      mark: one,
      x,
      y: yAt(one.y),
      slope: slopeBefore(drawn, one.style, x, 1.5 * text),
      isStillToCome: isStillToCome(prepared.panel, one.style, one.x, motion),
    };
  });
  // An end mark beside the same curve's peak would only be a blot.
  const isMarked = (line: ChartLine, x: number, y: number) =>
    markedPoints.some(
      (one) => isSameStyle(one.mark.style, line.style) && Math.hypot(one.x - x, one.y - y) < 3.2 * mark,
    );
  const endMarks = drawn.flatMap(({ line, end }) => {
    if (!end || !line.label || isMarked(line, xAt(end.x), yAt(end.y))) return [];
    if (isStillToCome(prepared.panel, line.style, end.x, motion)) return [];
    const { colour, mark: shape } = drawnStyle(line.style, look.theme);
    return [endMark(shape, xAt(end.x), yAt(end.y), { colour, ground, radiusPx: mark })];
  });
  const covered = (means: boolean) =>
    drawn
      .filter(({ line }) => (line.weight === 'mean') === means)
      .map(({ pixels }) => coveredColumns(pixels, left, right));
  const marks =
    markedPoints.length === 0
      ? []
      : drawMarks(
          markedPoints,
          {
            plot: { left, right, top, bottom },
            means: covered(true),
            pulls: covered(false),
            rules,
            theme: look.theme,
            ground,
          },
          proportions,
        );
  // What a rule says is said of whole curves: it comes when they are there.
  const isUnderWay = prepared.lines.some(
    ({ line, end }) => end !== null && isStillToCome(prepared.panel, line.style, end.x, motion),
  );
  const panelRules = drawPanelRules(
    isUnderWay ? [] : (prepared.panel.rules ?? []),
    {
      plot: { left, right, top, bottom },
      xAt,
      xRange: chart.xRange,
      curves: covered(true),
      edges: edges.flatMap(({ low, high }) => [
        coveredColumns(low, left, right),
        coveredColumns(high, left, right),
      ]),
    },
    proportions,
    theme,
  );
  const labels = drawEndLabels(
    laid.labels,
    labelPlace(chart, layout, laid, proportions),
    proportions,
    look.theme,
    ({ style, end }) => isStillToCome(prepared.panel, style, end.x, motion),
  );
  return group([
    ...titles,
    ...grid,
    ...zero,
    ...windowRules,
    // In a place of their own: a page may have them come in softly.
    element('g', { class: 'bands' }, bands),
    ...panelRules,
    ...edgings,
    ...lines,
    ...endMarks,
    ...marks,
    ...ticks,
    ...labels,
  ]);
}

/** Where the labels of a panel's lines stand. */
export function labelPlace(
  chart: ChartDescription,
  layout: StackLayout,
  { top, bottom, axis }: LaidPanel,
  { narrow, text, title }: Proportions,
): LabelPlace {
  const xAt = straightScale(chart.xRange, [layout.left, layout.right]);
  const yAt = straightScale(axis.range, [bottom, top]);
  return {
    ...layout.labels,
    top: narrow ? top - 0.3 * text : top - title + 0.2 * text,
    bottom: bottom + 0.2 * text,
    at: ({ x, y }) => [xAt(x), yAt(y)],
  };
}

function scaled(values: ArrayLike<number>, { offset, factor }: StraightScale): Float64Array {
  const pixels = new Float64Array(values.length);
  for (let index = 0; index < values.length; index += 1) pixels[index] = offset + factor * values[index]!;
  return pixels;
}

function slopeBefore(
  drawn: (PreparedLine & { pixels: Points })[],
  style: PreparedLine['line']['style'],
  x: number,
  back: number,
): number {
  const own = drawn.find(({ line }) => line.weight === 'mean' && isSameStyle(line.style, style));
  const here = own ? heightAt(own.pixels.x, own.pixels.y, x) : null;
  const before = own ? heightAt(own.pixels.x, own.pixels.y, x - back) : null;
  return here === null || before === null ? 0 : (here - before) / back;
}
