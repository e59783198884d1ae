import type { SceneNode, StillDescription } from './model.ts';
import { element, px, textAt } from './scene-node.ts';
import { shortened, textWidth } from './text-width.ts';

/** Heights of text that the mark has, beside the footer and in a row of its own; the gap before it and before the name. */
const MARK = 2.2;
const MARK_IN_ROW = 1.3;
const GAP = 0.8;
const ROW = 1.6;
/** A signature takes no more of the footer's width than this; one in a row of its own has all of it. */
const MOST_WIDTH = 0.35;

/** Whose picture it is, laid out for the right end of the footer, on a narrow picture in a row under it. */
export interface SignatureLayout {
  /** What it takes off the footer's width with the gap before it, px; 0 without a signature, or in a row of its own. */
  widthPx: number;
  /** Of a row of its own, px; 0 without one. */
  heightPx: number;
  /** Its nodes, with the right edge and the last baseline of the footer given. */
  nodes: (right: number, baseline: number) => SceneNode[];
}

/** Lays out name and mark beside each other: the mark at the right edge, the name before it. */
export function signatureIn(
  signature: StillDescription['signature'],
  room: number,
  { text, isNarrow }: { text: number; isNarrow: boolean },
  colour: string,
): SignatureLayout {
  if (signature === null || (signature.name === '' && signature.mark === null))
    return { widthPx: 0, heightPx: 0, nodes: () => [] };
  const { mark } = signature;
  const most = (isNarrow ? 1 : MOST_WIDTH) * room;
  const highest = (isNarrow ? MARK_IN_ROW : MARK) * text;
  const scale = mark === null ? 0 : Math.min(highest / mark.height, most / 2 / mark.width);
  const [width, height] = mark === null ? [0, 0] : [scale * mark.width, scale * mark.height];
  const beforeMark = mark === null ? 0 : GAP * text;
  const name = shortened(signature.name, most - width - beforeMark, text, 'sans');
  const nameWidth = textWidth(name, text, 'sans');
  return {
    widthPx: isNarrow ? 0 : nameWidth + (name === '' ? 0 : beforeMark) + width + GAP * text,
    heightPx: isNarrow ? ROW * text : 0,
    nodes: (right, baseline) => [
      ...(mark === null
        ? []
        : [imageAt(mark.address, right - width, baseline + 0.25 * text - height, width, height)]),
      ...(name === ''
        ? []
        : [
            textAt(right - width - beforeMark, baseline, name, {
              sizePx: text,
              face: 'sans',
              colour,
              anchor: 'end',
            }),
          ]),
    ],
  };
}

const imageAt = (address: string, x: number, y: number, width: number, height: number): SceneNode =>
  element('image', { href: address, x: px(x), y: px(y), width: px(width), height: px(height) });
