import type { Box } from './columns.ts';
import { type Face, FONT_FILES, familyList } from './fonts.ts';
import type { Scene, SceneNode } from './model.ts';
import { textWidth } from './text-width.ts';

export interface TextBox extends Box {
  text: string;
  sizePx: number;
}

const FACES = Object.keys(FONT_FILES) as Face[];

function faceOf({ attributes }: SceneNode): Face {
  const face = FACES.find(
    (one) =>
      familyList(one) === attributes['font-family'] && FONT_FILES[one].weight === attributes['font-weight'],
  );
  if (!face) throw new Error(`No face for ${JSON.stringify(attributes)}`);
  return face;
}

/** Where every text of a drawing lies: from the capitals' height to the descenders'. */
export function textBoxes(scene: Pick<Scene, 'nodes'>): TextBox[] {
  const boxOf = (node: SceneNode): TextBox[] => {
    const inside = node.children.flatMap(boxOf);
    if (node.tag !== 'text') return inside;
    const text = node.text ?? '';
    const sizePx = Number(node.attributes['font-size']);
    const width = textWidth(text, sizePx, faceOf(node));
    const x = Number(node.attributes.x);
    const y = Number(node.attributes.y);
    const anchor = node.attributes['text-anchor'] ?? 'start';
    const left = anchor === 'middle' ? x - width / 2 : anchor === 'end' ? x - width : x;
    return [
      { text, sizePx, left, right: left + width, top: y - 0.73 * sizePx, bottom: y + 0.21 * sizePx },
      ...inside,
    ];
  };
  return scene.nodes.flatMap(boxOf);
}

/** Pairs of texts that lie on one another. */
export function overlappingTexts(boxes: TextBox[]): string[] {
  return boxes.flatMap((one, index) =>
    boxes
      .slice(index + 1)
      .filter(
        (other) =>
          one.left < other.right &&
          other.left < one.right &&
          one.top < other.bottom &&
          other.top < one.bottom,
      )
      .map((other) => `${one.text} / ${other.text}`),
  );
}

/** Texts that leave the drawing. */
export function textsOutside(boxes: TextBox[], { width, height }: Pick<Scene, 'width' | 'height'>): string[] {
  return boxes
    .filter(({ left, right, top, bottom }) => left < 0 || top < 0 || right > width || bottom > height)
    .map(({ text }) => text);
}
