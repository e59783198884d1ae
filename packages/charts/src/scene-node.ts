import { type Face, FONT_FILES, familyList } from './fonts.ts';
import type { SceneNode } from './model.ts';

/** Hundredths of a pixel are enough, and keep a drawing short. */
export const px = (value: number): number => Math.round(value * 100) / 100;

export function element(
  tag: SceneNode['tag'],
  attributes: Record<string, string | number>,
  children: SceneNode[] = [],
): SceneNode {
  return { tag, attributes, children };
}

export const group = (children: SceneNode[]): SceneNode => element('g', {}, children);

export interface TextLook {
  sizePx: number;
  face: Face;
  colour: string;
  anchor?: 'start' | 'middle' | 'end';
}

/** A line of text on its baseline. */
export function textAt(x: number, baseline: number, text: string, look: TextLook): SceneNode {
  const attributes: Record<string, string | number> = {
    x: px(x),
    y: px(baseline),
    fill: look.colour,
    'font-family': familyList(look.face),
    'font-size': px(look.sizePx),
    'font-weight': FONT_FILES[look.face].weight,
  };
  if (look.anchor && look.anchor !== 'start') attributes['text-anchor'] = look.anchor;
  return { tag: 'text', attributes, children: [], text };
}

export interface StrokeLook {
  colour: string;
  widthPx: number;
  /** In widths of the line. */
  dash?: readonly number[];
  opacity?: number;
}

const strokeAttributes = ({ colour, widthPx, dash = [], opacity = 1 }: StrokeLook) => ({
  stroke: colour,
  'stroke-width': px(widthPx),
  ...(dash.length > 0 ? { 'stroke-dasharray': dash.map((part) => px(part * widthPx)).join(' ') } : {}),
  // Of the stroke and not of the element: a layer of its own takes a rasteriser as long as the whole picture.
  ...(opacity < 1 ? { 'stroke-opacity': opacity } : {}),
});

export function straight(x1: number, y1: number, x2: number, y2: number, look: StrokeLook): SceneNode {
  return element('line', { x1: px(x1), y1: px(y1), x2: px(x2), y2: px(y2), ...strokeAttributes(look) });
}

/** A stroked path without a fill. */
export function strokedPath(d: string, look: StrokeLook): SceneNode {
  return element('path', { d, fill: 'none', 'stroke-linejoin': 'round', ...strokeAttributes(look) });
}
