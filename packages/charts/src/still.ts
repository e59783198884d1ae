import { haloed } from './halo.ts';
import type { Scene, SceneNode, StackGeometry, StillDescription } from './model.ts';
import { drawBody } from './picture-body.ts';
import type { PictureLook } from './picture-look.ts';
import { drawPictureStack } from './picture-stack.ts';
import { textAt } from './scene-node.ts';
import { groundOf } from './stack.ts';
import type { StackMotion } from './stack-motion.ts';
import { type PlacedLines, stillLayout } from './still-layout.ts';
import { stillMeasures } from './still-shape.ts';
import type { StillSize } from './still-size.ts';
import { THEMES } from './theme.ts';

/**
 * A still for a video, an article or a telephone: headline in serif, subline, the picture, and under it what a doubter asks
 * for. All sizes are shares of its frame, so that 1920 × 1080 and 3840 × 2160 are one picture; a square, a tall and a
 * small one have proportions of their own. Nothing is smaller than its shape's least text: what finds no room is cut or left out.
 *
 * `motion`: how far the lines of its stack have drawn themselves, in a clip; missing: all is there.
 *
 * @example sceneToSvg(drawStill(still, { width: 1920, height: 1080, theme: 'dark', ground: true }))
 */
export function drawStill(still: StillDescription, size: StillSize, motion?: StackMotion): Scene {
  return drawn(still, size, motion).scene;
}

/** Where the stack of a still lies and the size of its text, for a cursor laid over it; `null`: it shows none. */
export function stillStack(
  still: StillDescription,
  size: StillSize,
): { geometry: StackGeometry; text: number } | null {
  const { geometry } = drawn(still, size);
  return geometry === null ? null : { geometry, text: stillMeasures(size).text };
}

function drawn(
  still: StillDescription,
  size: StillSize,
  motion?: StackMotion,
): { scene: Scene; geometry: StackGeometry | null } {
  const { width, height } = size;
  const theme = THEMES[size.theme];
  const layout = stillLayout(still, size);
  const { measures, frame } = layout;
  const { text, margin, shape } = measures;
  const words = (
    { lines, sizePx, first, row }: PlacedLines,
    look: { face: 'sans' | 'sansStrong' | 'serifStrong'; colour: string },
  ): SceneNode[] =>
    lines.map((line, index) => textAt(margin, first + index * row, line, { ...look, sizePx }));
  const soft = { face: 'sans', colour: theme.softInk } as const;
  const look: PictureLook = {
    shape,
    text,
    theme: size.theme,
    ground: theme.paper,
    overlay: !size.ground,
    still: { width, height },
    motion,
  };
  const { body } = still;
  const stack = body.kind === 'stack' ? drawPictureStack(body.chart, frame, look) : null;
  const nodes = [
    ...words(layout.headline, { face: 'serifStrong', colour: theme.ink }),
    ...words(layout.subline, soft),
    ...(stack?.nodes ?? drawBody(body, frame, look)),
    ...words(layout.warning, { face: 'sansStrong', colour: theme.cautionInk }),
    ...words(layout.footer, soft),
    ...layout.signature.nodes(width - margin, layout.lastRow),
  ];
  const scene = {
    width,
    height,
    nodes: size.ground ? [groundOf(size, theme.paper), ...nodes] : haloed(nodes, theme, text),
    alternative: [still.headline, still.subline, still.alternative, still.warning ?? '']
      .map((said) => said.trim())
      .filter(Boolean)
      .map(asSentence)
      .join(' '),
  };
  return { scene, geometry: stack?.geometry ?? null };
}

/** For a voice that reads it out: a heading ends like a sentence. */
const asSentence = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);
