import { type Box, type CoveredColumns, overlaps, shareCrossed } from './columns.ts';
import { endMark } from './end-mark.ts';
import type { ChartMark, SceneNode, ThemeName } from './model.ts';
import { drawnStyle } from './palette.ts';
import type { Proportions } from './proportions.ts';
import { px, straight, strokedPath, textAt } from './scene-node.ts';
import { textWidth } from './text-width.ts';

export interface MarkedPoint {
  mark: ChartMark;
  x: number;
  y: number;
  /** Way the curve goes there, in pixels along and down; for the arrow of one that is still climbing. */
  slope: number;
  /** Its line has not come so far: it keeps its place and is not drawn. */
  isStillToCome: boolean;
}

export interface MarkSurroundings {
  plot: Box;
  means: CoveredColumns[];
  pulls: CoveredColumns[];
  /** Where vertical rules stand. */
  rules: number[];
  theme: ThemeName;
  ground: string;
}

/** Which way from the point: as shares of the text's width to its left edge, and of its height; the best first. */
const WAYS: [across: number, down: number][] = [
  [-0.5, -1],
  [-0.75, -1],
  [-0.25, -1],
  [-1, -1],
  [0, -1],
  [-0.5, 1],
  [-0.25, 1],
  [0, 1],
  [-0.75, 1],
  [-1, 1],
  [-1, 0],
  [0, 0],
];
/** From the point to the text's middle, in text heights. */
const DISTANCES = [0.8, 1.2, 1.7, 2.3, 3, 3.8];
/** A text that would lie on curves over more than this share of its width is left out: the tables have the figure. */
const MOST_CROSSED = 0.2;
/** Kept free between a text and the plot's edge. */
const EDGE = 0.3;

function boxFor(
  point: MarkedPoint,
  [across, down]: [number, number],
  distance: number,
  text: number,
  plot: Box,
): Box {
  const width = textWidth(point.mark.text, text, 'sansStrong');
  const aside = down === 0 ? (across + 0.5) * 2 * distance * text : 0;
  const wanted = point.x + across * width + aside;
  // Above and below, a text near the plot's edge moves in; aside, it would move over the point.
  const inside = Math.max(plot.left + EDGE * text, Math.min(wanted, plot.right - EDGE * text - width));
  const left = down === 0 ? wanted : inside;
  const middle = point.y + down * (distance + 0.3) * text;
  return { left, right: left + width, top: middle - 0.6 * text, bottom: middle + 0.6 * text };
}

const within = (box: Box, plot: Box, edge: number): boolean =>
  box.left >= plot.left + edge &&
  box.right <= plot.right - edge &&
  box.top >= plot.top &&
  box.bottom <= plot.bottom;

/** From the point to the nearest edge of its text. */
function leaderEnd(point: { x: number; y: number }, box: Box): [x: number, y: number] {
  const x = Math.max(box.left, Math.min(point.x, box.right));
  return [x, Math.max(box.top, Math.min(point.y, box.bottom))];
}

function leaderCrosses(point: { x: number; y: number }, [endX, endY]: [number, number], other: Box): boolean {
  const steps = [0.2, 0.4, 0.6, 0.8, 1];
  return steps.some((share) => {
    const x = point.x + share * (endX - point.x);
    const y = point.y + share * (endY - point.y);
    return x > other.left && x < other.right && y > other.top && y < other.bottom;
  });
}

/** The best free place for each mark's text, highest point first; `null` where there is no good one. */
function placed(
  points: MarkedPoint[],
  around: MarkSurroundings,
  { text, mark }: Proportions,
): (Box | null)[] {
  const boxes: (Box | null)[] = points.map(() => null);
  const dots: Box[] = points.map(({ x, y }) => ({
    left: x - mark,
    right: x + mark,
    top: y - mark,
    bottom: y + mark,
  }));
  const highestFirst = points
    .map((_, index) => index)
    .sort((one, other) => (points[one]?.y ?? 0) - (points[other]?.y ?? 0));
  for (const index of highestFirst) {
    const point = points[index];
    if (!point || point.mark.text === '') continue;
    const texts = boxes.filter((box) => box !== null);
    let best: { box: Box; cost: number } | null = null;
    for (const distance of DISTANCES) {
      for (const [order, way] of WAYS.entries()) {
        const box = boxFor(point, way, distance, text, around.plot);
        const end = leaderEnd(point, box);
        if (!within(box, around.plot, EDGE * text * 0.99)) continue;
        if ([...texts, ...dots].some((other) => overlaps(box, other))) continue;
        if (texts.some((other) => leaderCrosses(point, end, other))) continue;
        const crossed = (curves: CoveredColumns[]) =>
          curves.reduce((sum, curve) => sum + shareCrossed(box, curve), 0);
        const onMeans = crossed(around.means);
        const onRules = around.rules.filter(
          (x) => x > box.left - 0.2 * text && x < box.right + 0.2 * text,
        ).length;
        if (onMeans > MOST_CROSSED) continue;
        const cost = distance + 0.03 * order + 40 * onMeans + 8 * crossed(around.pulls) + 1.5 * onRules;
        if (best === null || cost < best.cost) best = { box, cost };
      }
    }
    boxes[index] = best?.box ?? null;
  }
  return boxes;
}

/** An open arrow on the way the curve is going. */
function climbingArrow(point: MarkedPoint, colour: string, { text, meanLine }: Proportions): SceneNode {
  const angle = Math.atan(point.slope);
  const at = (along: number, aside: number) => {
    const x = point.x + along * Math.cos(angle) - aside * Math.sin(angle);
    const y = point.y + along * Math.sin(angle) + aside * Math.cos(angle);
    return `${px(x)},${px(y)}`;
  };
  const tip = 0.95 * text;
  const d = `M${at(0.4 * text, 0)}L${at(tip, 0)}M${at(tip - 0.3 * text, -0.28 * text)}L${at(tip, 0)}L${at(tip - 0.3 * text, 0.28 * text)}`;
  return strokedPath(d, { colour, widthPx: 0.6 * meanLine });
}

export function drawMarks(
  points: MarkedPoint[],
  around: MarkSurroundings,
  proportions: Proportions,
): SceneNode[] {
  const { text, hairline, mark } = proportions;
  const long = points.map((point) => ({
    ...point,
    mark: { ...point.mark, text: point.mark.longText ?? point.mark.text },
  }));
  const longBoxes = placed(long, around, proportions);
  // All with their uncertainty or none: one without would look the surer of the two.
  const fits = longBoxes.every((box) => box !== null);
  const worded = fits ? long : points;
  const boxes = fits ? longBoxes : placed(points, around, proportions);
  return worded.flatMap((point, index) => {
    if (point.isStillToCome) return [];
    const { colour, mark: shape } = drawnStyle(point.mark.style, around.theme);
    const hollow = point.mark.stillClimbing;
    const nodes = [
      endMark(shape, point.x, point.y, { colour, ground: around.ground, hollow, radiusPx: mark }),
    ];
    if (hollow) nodes.push(climbingArrow(point, colour, proportions));
    const box = boxes[index];
    if (!box) return nodes;
    const [nearX, nearY] = leaderEnd(point, box);
    const length = Math.hypot(nearX - point.x, nearY - point.y);
    if (length > 1.3 * text) {
      const share = (length - 0.25 * text) / length;
      const [endX, endY] = [point.x + share * (nearX - point.x), point.y + share * (nearY - point.y)];
      nodes.unshift(straight(point.x, point.y, endX, endY, { colour, widthPx: hairline, opacity: 0.6 }));
    }
    nodes.push(
      textAt(box.left, (box.top + box.bottom) / 2 + 0.36 * text, point.mark.text, {
        sizePx: text,
        face: 'sansStrong',
        colour,
      }),
    );
    return nodes;
  });
}
