import { heightAt } from './clip.ts';
import { labelCentres } from './end-labels.ts';
import { endMark } from './end-mark.ts';
import type { ChartDescription, SceneNode } from './model.ts';
import { drawnStyle } from './palette.ts';
import { labelPlace } from './panel-drawing.ts';
import type { DrawingLook } from './panel-frame.ts';
import type { Proportions } from './proportions.ts';
import { figurePlace, runningFigure } from './running-figure.ts';
import { element, px, straight, textAt } from './scene-node.ts';
import { spread } from './spread.ts';
import type { LaidPanel, StackLayout } from './stack-layout.ts';
import type { StackMotion } from './stack-motion.ts';
import { straightScale } from './straight-scale.ts';
import { textWidth } from './text-width.ts';
import { THEMES } from './theme.ts';
import { pointText } from './zoom.ts';

/** A running figure comes to the place of the name that will stand at the line's end over so many heights of text. */
const GLIDE_EM = 5;
/** Where there is no room beside the curves, a running figure rises so many heights of text over its line. */
const RISE_EM = 1.4;

interface Head {
  x: number;
  y: number;
  colour: string;
  shape: ReturnType<typeof drawnStyle>['mark'];
  key: string;
  figure: string;
  widthPx: number;
  /** Where the name's first row will stand; `null`: there is no room for it. */
  goal: number | null;
  /** Its figure runs on top, beside its name. */
  isSaidOnTop: boolean;
}

/**
 * What runs with the drawing: a hair through all panels with the engine speed on it, and at each line's head its mark, its
 * key and its figure there.
 */
export function drawHeads(
  chart: ChartDescription,
  layout: StackLayout,
  look: DrawingLook,
  motion: StackMotion,
): SceneNode[] {
  const xAt = straightScale(chart.xRange, [layout.left, layout.right]);
  const x = xAt(motion.until);
  const { text, hairline, row } = look.proportions;
  const theme = THEMES[look.theme];
  const said = figurePlace(chart, motion.until);
  const nodes = layout.panels.flatMap((laid) => {
    const heads = headsOf(chart, layout, laid, look, motion);
    const lefts = heads.map(({ widthPx }) =>
      Math.min(x + look.proportions.labelGap, layout.frame.right - widthPx),
    );
    const centres = spread(
      heads.map((head, index) => head.y + shift(head, x, lefts[index]!, layout, look)),
      heads.map(() => row),
      [laid.top - 0.6 * look.proportions.title, laid.bottom + 0.2 * text],
    );
    return heads.flatMap((head, index) => [
      endMark(head.shape, head.x, head.y, {
        colour: head.colour,
        ground: look.ground,
        radiusPx: 1.15 * look.proportions.mark,
      }),
      ...(head.isSaidOnTop ? [] : words(head, lefts[index]!, (centres[index] ?? head.y) + 0.36 * text, look)),
    ]);
  });
  const [first, last] = [layout.panels[0], layout.panels.at(-1)];
  if (!first || !last || nodes.length === 0) return [];
  const hair = straight(x, first.top, x, last.bottom, {
    colour: theme.softInk,
    widthPx: hairline,
    opacity: 0.8,
  });
  const span = speedPillSpan(chart, layout, look.proportions, motion);
  return [hair, ...speedPill(pointText(chart, said), span, last.bottom, look), ...nodes];
}

/**
 * How far a figure stands off its line's head, down: it comes to where the name will stand, so that it does not run into
 * the names that stand there; without room for it beside the curves it rises over its line.
 */
function shift(head: Head, x: number, left: number, layout: StackLayout, look: DrawingLook): number {
  const { text, labelGap } = look.proportions;
  if (head.widthPx > layout.frame.right - layout.labels.x)
    return -RISE_EM * text * smooth((x + labelGap - left) / (2 * text));
  if (head.goal === null) return 0;
  const over = left + head.widthPx - (layout.labels.x - (0.3 + GLIDE_EM) * text);
  return (head.goal - head.y) * smooth(over / (GLIDE_EM * text));
}

function headsOf(
  chart: ChartDescription,
  layout: StackLayout,
  laid: LaidPanel,
  look: DrawingLook,
  motion: StackMotion,
): Head[] {
  const { top, bottom, axis, labels } = laid;
  const { panel, lines } = laid.prepared;
  const { text } = look.proportions;
  const xAt = straightScale(chart.xRange, [layout.left, layout.right]);
  const yAt = straightScale(axis.range, [bottom, top]);
  const onTop = new Set(layout.names.named.filter(({ value }) => value !== null).map(({ key }) => key));
  const centres = labelCentres(labels, labelPlace(chart, layout, laid, look.proportions));
  const goals = new Map(
    labels.map(({ end, rows, rowPx }, index) => [
      end,
      (centres[index] ?? 0) - ((rows.length - 1) * rowPx) / 2,
    ]),
  );
  return lines.flatMap((one): Head[] => {
    const { line, points, end } = one;
    const figure = runningFigure(chart, panel, one, motion);
    if (!line.label || figure === null) return [];
    const height = heightAt(points.x, points.y, motion.until)!;
    const { colour, mark: shape } = drawnStyle(line.style, look.theme);
    const keyWidth = textWidth(line.label.key, text, 'sansStrong') + 0.4 * text;
    return [
      {
        x: xAt(motion.until),
        y: yAt(height),
        colour,
        shape,
        key: line.label.key,
        figure,
        widthPx: keyWidth + textWidth(figure, text, 'sans'),
        goal: (end && goals.get(end)) ?? null,
        isSaidOnTop: laid === layout.panels[0] && onTop.has(line.label.key),
      },
    ];
  });
}

/** Key and figure, with a rim of the ground round them that keeps them off the curves they pass. */
function words(head: Head, left: number, baseline: number, look: DrawingLook): SceneNode[] {
  const { text } = look.proportions;
  const figureLeft = left + textWidth(head.key, text, 'sansStrong') + 0.4 * text;
  const rim = {
    stroke: look.ground,
    'stroke-width': px(0.32 * text),
    'stroke-linejoin': 'round',
    'paint-order': 'stroke',
  };
  return [
    textAt(left, baseline, head.key, { sizePx: text, face: 'sansStrong', colour: head.colour }),
    textAt(figureLeft, baseline, head.figure, { sizePx: text, face: 'sans', colour: head.colour }),
  ].map((node) => ({ ...node, attributes: { ...node.attributes, ...rim } }));
}

/** From where to where the running engine speed stands over the axis' figures, and not over its title. */
export function speedPillSpan(
  chart: ChartDescription,
  layout: StackLayout,
  { text }: Proportions,
  { until }: StackMotion,
): [left: number, right: number] {
  const x = straightScale(chart.xRange, [layout.left, layout.right])(until);
  const width = textWidth(pointText(chart, figurePlace(chart, until)), text, 'sansStrong') + text;
  const over = textWidth(layout.xTickTexts.at(-1) ?? '', text, 'sans') / 2 + 0.2 * text;
  const left = Math.max(layout.frame.left, Math.min(x - width / 2, layout.right + over - width));
  return [left, left + width];
}

function speedPill(
  figure: string,
  [left, right]: readonly [number, number],
  bottom: number,
  look: DrawingLook,
): SceneNode[] {
  const { text } = look.proportions;
  const theme = THEMES[look.theme];
  const width = right - left;
  const top = bottom + 0.35 * text;
  return [
    element('rect', {
      x: px(left),
      y: px(top),
      width: px(width),
      height: px(1.5 * text),
      rx: px(0.3 * text),
      fill: look.ground,
      stroke: theme.softInk,
      'stroke-width': px(1.5 * look.proportions.hairline),
    }),
    textAt(left + width / 2, top + 1.11 * text, figure, {
      sizePx: text,
      face: 'sansStrong',
      colour: theme.ink,
      anchor: 'middle',
    }),
  ];
}

const smooth = (share: number): number => {
  const at = Math.max(0, Math.min(share, 1));
  return at * at * (3 - 2 * at);
};
