import type { ListedPoints } from './clip.ts';
import { endMark } from './end-mark.ts';
import { inkGrid } from './ink-grid.ts';
import { drawMapFrame } from './map-frame.ts';
import { inPlot, layoutMap, type MapLayout } from './map-layout.ts';
import { drawMapLink } from './map-link.ts';
import { mapTexts } from './map-texts.ts';
import type { DrawSize, MapDescription, MapGeometry, Scene, SceneNode } from './model.ts';
import { drawNameRows } from './name-rows.ts';
import { drawnStyle } from './palette.ts';
import { linePath } from './path.ts';
import { drawPlacedText, placedTexts } from './placed-texts.ts';
import { type Proportions, proportionsFor } from './proportions.ts';
import { element, px, strokedPath } from './scene-node.ts';
import { groundOf } from './stack.ts';
import { THEMES, type Theme } from './theme.ts';
import { withoutBoxes } from './without-boxes.ts';

/** How much each kind of line stands in the way of a text. */
const INK = { efficiency: 0.4, speed: 0.7, edge: 1, operating: 1.6, link: 1, point: 2.5 } as const;
const BROKEN = [3.5, 3] as const;

export interface OperatingPixels {
  operating: MapDescription['operating'][number];
  line: ListedPoints;
  /** The named speeds that lie in the plot. */
  marks: { engineSpeed: number; x: number; y: number; text: string }[];
}

/**
 * A compressor map: its lines in ink and quiet greys, and in their own colour, dash and mark the lines on which combinations run.
 * Nothing is computed but places. Words that would lie on one another or on a combination's line go elsewhere or are left out.
 *
 * @example drawMap(map, { width: 560, height: 480, text: 13, theme: 'light', ground: true }).scene
 */
export function drawMap(map: MapDescription, size: DrawSize): { scene: Scene; geometry: MapGeometry } {
  const theme = THEMES[size.theme];
  const proportions = proportionsFor(size);
  const { edge } = proportions;
  const frame = { left: edge, right: size.width - edge, top: edge, bottom: size.height - edge };
  const layout = layoutMap(map, frame, proportions);
  const pixels = (line: { x: readonly (number | null)[]; y: readonly (number | null)[] }) =>
    inPlot(line, map, layout);
  const speedLines = map.speedLines.map((one) => ({ ...one, line: pixels(one) }));
  const efficiency = map.efficiency.map((one) => ({ ...one, line: pixels(one) }));
  const edges = map.edges.map((one) => ({ ...one, line: pixels(one) }));
  const operating = map.operating.map((one) => operatingPixels(one, map, layout));

  const ink = inkGrid(layout.plot);
  for (const { line } of efficiency) ink.addLine(line, INK.efficiency);
  for (const { line } of speedLines) ink.addLine(line, INK.speed);
  for (const { line } of edges) ink.addLine(line, INK.edge);
  for (const { line } of operating) ink.addLine(line, INK.operating);
  const links = linksOf(operating);
  for (const { from, to } of links) ink.addLine({ x: [from.x, to.x], y: [from.y, to.y] }, INK.link);
  if (map.points) ink.addLine(pointPixels(map.points, layout), INK.point);
  const dots = operating.flatMap(({ marks, line }) => [
    ...marks.map((one) => dotBox(one, proportions.mark)),
    // The cursor begins at the ends, with a mark of its own size.
    ...endOf(line).map((one) => dotBox(one, proportions.cursorMark)),
  ]);
  const placed = placedTexts(
    mapTexts(
      { speedLines, efficiency, edges, operating, plotHeight: layout.plot.bottom - layout.plot.top },
      proportions,
      size.theme,
    ),
    { frame: layout.plot, kept: dots, ink },
    proportions.text,
  );
  const boxes = placed.map(({ box }) => box);
  const nodes = [
    ...drawNameRows(layout.names, frame.left, frame.top, proportions, {
      theme: size.theme,
      ground: theme.card,
    }),
    ...drawMapFrame(map, layout, proportions, theme),
    ...efficiency.map(({ line }) =>
      strokedPath(linePath(withoutBoxes(line, boxes), 0), {
        colour: theme.softInk,
        widthPx: proportions.hairline,
        opacity: 0.55,
      }),
    ),
    ...speedLines.map(({ line, isMeasured }) =>
      strokedPath(linePath(withoutBoxes(line, boxes), 0), {
        colour: theme.softInk,
        widthPx: 0.11 * proportions.text,
        dash: isMeasured ? [] : BROKEN,
      }),
    ),
    ...edges.map(({ line, isEstimated }) =>
      strokedPath(linePath(withoutBoxes(line, boxes), 0), {
        colour: theme.ink,
        widthPx: 0.14 * proportions.text,
        dash: isEstimated ? BROKEN : [],
      }),
    ),
    ...drawPoints(map, layout, proportions, theme),
    ...links.flatMap(({ from, to }) =>
      drawMapLink(from, to, {
        colour: theme.ink,
        widthPx: proportions.hairline,
        markPx: proportions.mark,
        opacity: 0.7,
      }),
    ),
    ...operating.flatMap((one) => drawOperating(one, proportions, size)),
    ...placed.flatMap((one) =>
      drawPlacedText(one, { sizePx: proportions.text, hairline: proportions.hairline }),
    ),
  ];
  const { left, right, top, bottom } = layout.plot;
  return {
    scene: {
      width: size.width,
      height: size.height,
      nodes: [...(size.ground ? [groundOf(size, theme.card)] : []), ...nodes],
      alternative: map.alternative,
    },
    geometry: { left, right, top, bottom, xRange: map.xRange, yRange: map.yRange },
  };
}

function operatingPixels(
  operating: OperatingPixels['operating'],
  map: MapDescription,
  layout: MapLayout,
): OperatingPixels {
  const { left, right, top, bottom } = layout.plot;
  const marks = operating.named.flatMap(({ engineSpeed, text }) => {
    const at = operating.engineSpeed.indexOf(engineSpeed);
    const x = layout.xAt(operating.x[at] ?? Number.NaN);
    const y = layout.yAt(operating.y[at] ?? Number.NaN);
    return x >= left && x <= right && y >= top && y <= bottom ? [{ engineSpeed, x, y, text }] : [];
  });
  return { operating, line: inPlot(operating, map, layout), marks };
}

/** From the first combination to the second, which it is compared with, at the engine speeds that are marked on both. */
function linksOf([first, second]: readonly OperatingPixels[]) {
  return (first?.marks ?? []).flatMap((from) => {
    const to = second?.marks.find(({ engineSpeed }) => engineSpeed === from.engineSpeed);
    return to === undefined ? [] : [{ from, to }];
  });
}

const dotBox = ({ x, y }: { x: number; y: number }, radiusPx: number) => ({
  left: x - radiusPx,
  right: x + radiusPx,
  top: y - radiusPx,
  bottom: y + radiusPx,
});

/** Where a line ends in the plot; none where nothing of it is drawn. */
function endOf({ x, y }: ListedPoints): { x: number; y: number }[] {
  const last = Array.from(x).findLastIndex(Number.isFinite);
  return last < 0 ? [] : [{ x: x[last]!, y: y[last]! }];
}

function drawOperating(
  { operating, line, marks }: OperatingPixels,
  { meanLine, mark }: Proportions,
  { theme }: DrawSize,
): SceneNode[] {
  const { colour, dash, mark: shape } = drawnStyle(operating.style, theme);
  return [
    strokedPath(linePath(line, meanLine), { colour, widthPx: meanLine, dash }),
    ...marks.map(({ x, y }) => endMark(shape, x, y, { colour, ground: THEMES[theme].card, radiusPx: mark })),
  ];
}

/** The map's own points one by one, so that no line is drawn between them. */
function pointPixels({ x, y }: NonNullable<MapDescription['points']>, { xAt, yAt }: MapLayout): ListedPoints {
  return {
    x: x.flatMap((flow) => [xAt(flow), Number.NaN]),
    y: y.flatMap((ratio) => [yAt(ratio), Number.NaN]),
  };
}

/** The map's own measured points: small open rings. */
function drawPoints(
  { points }: MapDescription,
  { xAt, yAt, plot }: MapLayout,
  { text, hairline }: Proportions,
  theme: Theme,
): SceneNode[] {
  return (points?.x ?? []).flatMap((flow, index) => {
    const [x, y] = [xAt(flow), yAt(points?.y[index] ?? Number.NaN)];
    if (!(x >= plot.left && x <= plot.right && y >= plot.top && y <= plot.bottom)) return [];
    return [
      element('circle', {
        cx: px(x),
        cy: px(y),
        r: px(0.17 * text),
        fill: theme.card,
        stroke: theme.softInk,
        'stroke-width': px(hairline),
      }),
    ];
  });
}
