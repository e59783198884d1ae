import { textBlock } from './card-text.ts';
import type { Box } from './columns.ts';
import { endMark } from './end-mark.ts';
import type { ChartDescription, PictureBody, SceneNode } from './model.ts';
import { drawNameRows, nameRows, nameRowsHeight } from './name-rows.ts';
import { drawnStyle } from './palette.ts';
import { linePath } from './path.ts';
import type { PictureLook } from './picture-look.ts';
import { pictureProportions } from './picture-stack.ts';
import { preparedPanel } from './prepared.ts';
import { straight, strokedPath, textAt } from './scene-node.ts';
import { straightScale } from './straight-scale.ts';
import { shortened, textWidth } from './text-width.ts';
import { THEMES } from './theme.ts';

type BigNumber = Extract<PictureBody, { kind: 'number' }>;

/** Of the frame's width beside the curves, or of its height above them. */
const NUMBER_SHARE = { beside: 0.52, above: 0.46 };
const UNIT = 0.42;
const BAND = 0.24;
/** Capitals and figures are this high, and a line below them begins this far under it. */
const FIGURE_EM = 0.73;
const MOST_NUMBER = 0.62;

/**
 * One number as large as can be, its band under it, what it is about, and two curves without figures: read at the size of a
 * stamp. One above the other on a tall frame, else beside each other.
 */
export function drawBigNumber(body: BigNumber, frame: Box, look: PictureLook): SceneNode[] {
  if (body.chart === null) return drawNumber(body, frame, look);
  const gap = 1.2 * look.text;
  if (look.shape !== 'tall') {
    const middle = frame.left + NUMBER_SHARE.beside * (frame.right - frame.left);
    return [
      ...drawNumber(body, { ...frame, right: middle - gap / 2 }, look),
      ...drawTwoCurves(body.chart, { ...frame, left: middle + gap / 2 }, look),
    ];
  }
  const middle = frame.top + NUMBER_SHARE.above * (frame.bottom - frame.top);
  return [
    ...drawNumber(body, { ...frame, bottom: middle - gap / 2 }, look),
    ...drawTwoCurves(body.chart, { ...frame, top: middle + gap / 2 }, look),
  ];
}

/** In the middle of its frame's height, from the left edge. */
function drawNumber(body: BigNumber, frame: Box, look: PictureLook): SceneNode[] {
  const theme = THEMES[look.theme];
  const [width, height] = [frame.right - frame.left, frame.bottom - frame.top];
  const wide =
    textWidth(body.number, 1, 'sansStrong') + (UNIT + 0.12) * textWidth(body.unit, 1, 'sansStrong');
  const about = textBlock(
    { text: body.what, sizePx: look.text, face: 'sans', colour: theme.softInk },
    width,
    2,
  );
  const room = (height - about.heightPx) / (FIGURE_EM + 2.1 * BAND);
  const size = Math.max(look.text, Math.min(width / (wide + 0.08), room, MOST_NUMBER * look.still.height));
  const bandSize = Math.max(look.text, BAND * size);
  const bandText = shortened(body.band, width, bandSize, 'sansStrong');
  const bandRow = bandText === '' ? 0 : 2 * bandSize;
  const used = FIGURE_EM * size + bandRow + about.heightPx;
  const top = frame.top + Math.max(0, (height - used) / 2);
  const baseline = top + FIGURE_EM * size;
  const number = shortened(body.number, width, size, 'sansStrong');
  const unitX = frame.left + textWidth(number, size, 'sansStrong') + 0.1 * size;
  const unit = shortened(body.unit, frame.right - unitX, Math.max(look.text, UNIT * size), 'sansStrong');
  const ink = { face: 'sansStrong', colour: theme.ink } as const;
  return [
    textAt(frame.left, baseline, number, { ...ink, sizePx: size }),
    ...(unit === ''
      ? []
      : [textAt(unitX, baseline, unit, { ...ink, sizePx: Math.max(look.text, UNIT * size) })]),
    ...(bandText === ''
      ? []
      : [textAt(frame.left, baseline + 1.66 * bandSize, bandText, { ...ink, sizePx: bandSize })]),
    ...about.draw(frame.left, baseline + bandRow),
  ];
}

/** The means of a chart's first panel with their names over them, thick enough for a stamp. */
function drawTwoCurves(chart: ChartDescription, frame: Box, look: PictureLook): SceneNode[] {
  const theme = THEMES[look.theme];
  const [panel] = chart.panels;
  if (!panel) return [];
  const { text } = look;
  const proportions = { ...pictureProportions(look, frame), valuesOnTop: false, mostNameRows: 2 };
  const means = panel.lines.filter(({ weight }) => weight === 'mean');
  const prepared = preparedPanel({ ...panel, lines: means, bands: [], marks: [] }, chart.xRange);
  const [low, high] = panel.reach ?? prepared.reach ?? [0, 1];
  const names = nameRows(means, frame.right - frame.left, proportions);
  const base = frame.bottom - 1.5 * text;
  const top = frame.top + nameRowsHeight(names, proportions) + 0.5 * text;
  if (base - top < text) return [];
  const mark = 0.3 * text;
  const xAt = straightScale(chart.xRange, [frame.left, frame.right - 1.5 * mark]);
  const yAt = straightScale([low - 0.04 * (high - low || 1), high], [base, top]);
  const widthPx = 0.2 * text;
  const curves = prepared.lines.flatMap(({ line, points, end }) => {
    const { colour, dash, mark: shape } = drawnStyle(line.style, look.theme);
    const path = linePath({ x: Array.from(points.x, xAt), y: Array.from(points.y, yAt) }, widthPx);
    return [
      ...(look.overlay ? [strokedPath(path, { colour: look.ground, widthPx: 2 * widthPx })] : []),
      strokedPath(path, { colour, widthPx, dash }),
      ...(end
        ? [endMark(shape, xAt(end.x), yAt(end.y), { colour, ground: look.ground, radiusPx: 1.2 * mark })]
        : []),
    ];
  });
  const width = frame.right - frame.left;
  const over = `${panel.title} over ${chart.xTitle.toLowerCase()}`;
  const axis = textWidth(over, text, 'sans') <= width ? over : shortened(panel.title, width, text, 'sans');
  return [
    ...drawNameRows(names, frame.left, frame.top, proportions, look),
    straight(frame.left, base, frame.right, base, { colour: theme.softInk, widthPx: 0.05 * text }),
    ...curves,
    textAt(frame.left, frame.bottom - 0.3 * text, axis, {
      sizePx: text,
      face: 'sans',
      colour: theme.softInk,
    }),
  ];
}
