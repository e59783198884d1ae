import { faceOf, type SceneNode, textWidth } from '@pullbook/charts';

/** Pixels of a frame, edges between them. */
export interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** Wherever it may be: of an element whose place is not told from its numbers. */
export const WHOLE: Box = { left: -1e6, right: 1e6, top: -1e6, bottom: 1e6 };

/** Half-covered pixels, and a rasteriser's rounding at the edges of what it draws. */
const EDGE = 3;
/** A mitred corner reaches out so many widths of its line at most: SVG's own limit of 4, halved. */
const MITRE = 2;

export const united = (boxes: readonly Box[]): Box => ({
  left: Math.min(...boxes.map(({ left }) => left)),
  right: Math.max(...boxes.map(({ right }) => right)),
  top: Math.min(...boxes.map(({ top }) => top)),
  bottom: Math.max(...boxes.map(({ bottom }) => bottom)),
});

export const overlap = (one: Box, other: Box): boolean =>
  one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;

/** How far an element reaches beyond its points, px. */
export const strokeRoom = ({ attributes }: SceneNode): number =>
  EDGE + (attributes.stroke === undefined ? 0 : MITRE * Number(attributes['stroke-width'] ?? 1));

/** The box of a way's straight pieces: `M10,20L30,40`. */
export function pointsBox(way: string, room: number): Box {
  const box = { left: Infinity, right: -Infinity, top: Infinity, bottom: -Infinity };
  const numbers = way.match(/-?\d+(?:\.\d+)?/gu) ?? [];
  for (let index = 0; index + 1 < numbers.length; index += 2) {
    const [x, y] = [Number(numbers[index]), Number(numbers[index + 1])];
    box.left = Math.min(box.left, x - room);
    box.right = Math.max(box.right, x + room);
    box.top = Math.min(box.top, y - room);
    box.bottom = Math.max(box.bottom, y + room);
  }
  return box;
}

/** What an element covers at most, px. */
export function nodeBox(node: SceneNode): Box {
  const { tag, attributes } = node;
  const number = (name: string) => Number(attributes[name] ?? 0);
  const room = strokeRoom(node);
  const around = (left: number, top: number, right: number, bottom: number): Box => ({
    left: Math.min(left, right) - room,
    right: Math.max(left, right) + room,
    top: Math.min(top, bottom) - room,
    bottom: Math.max(top, bottom) + room,
  });
  if (attributes.transform !== undefined) return WHOLE;
  switch (tag) {
    case 'line':
      return around(number('x1'), number('y1'), number('x2'), number('y2'));
    case 'rect':
    case 'image': {
      const [x, y] = [number('x'), number('y')];
      return around(x, y, x + number('width'), y + number('height'));
    }
    case 'circle': {
      const [x, y, r] = [number('cx'), number('cy'), number('r')];
      return around(x - r, y - r, x + r, y + r);
    }
    case 'path':
      return /[^MLZ\d.,\s-]/u.test(String(attributes.d)) ? WHOLE : pointsBox(String(attributes.d), room);
    case 'text':
      return textBox(node, around);
    case 'g':
    case 'title':
      return WHOLE;
  }
}

type Around = (left: number, top: number, right: number, bottom: number) => Box;

/** Generous: an em above the baseline and half of one below. */
function textBox({ attributes, text = '' }: SceneNode, around: Around): Box {
  const size = Number(attributes['font-size']);
  const face = faceOf(attributes);
  if (!face) return WHOLE;
  const width = textWidth(text, size, face);
  const before = { start: 0, middle: width / 2, end: width }[String(attributes['text-anchor'] ?? 'start')];
  if (before === undefined) return WHOLE;
  const left = Number(attributes.x) - before;
  const baseline = Number(attributes.y);
  return around(left - 0.2 * size, baseline - 1.1 * size, left + width + 0.2 * size, baseline + 0.5 * size);
}
