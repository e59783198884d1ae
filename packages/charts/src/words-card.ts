import { type CardBlock, partOf, stacked, textBlock } from './card-text.ts';
import type { Box } from './columns.ts';
import type { PictureBody, SceneNode } from './model.ts';
import type { PictureLook } from './picture-look.ts';
import { clauseThatFits, partsHeld } from './still-words.ts';
import { THEMES } from './theme.ts';

type Words = Extract<PictureBody, { kind: 'words' }>;

const LARGEST = 1.7;
const STEP = 0.05;
/** The first sentence, and quiet ones, against the others; the least size goes before both. */
const FIRST = 1.3;
const QUIET = 0.85;
const GAP_EM = 0.75;
/** Longer lines are lost at their ends. */
const LONGEST_LINE_EM = 54;
/** Of a sentence that is cut after a clause this share has to stand, else it leaves. */
const LEAST_CLAUSE = 0.4;
/** Of the height that is left over: above the words, so that few of them do not hang at the top. */
const ABOVE = 0.3;

/**
 * Sentences, the first one in the headline's letters and the largest, as large as all of them have room for; at the least size the
 * last ones are left out, and the last that stands may end after a clause; the only one is cut with an ellipsis.
 */
export function drawWordsCard({ paragraphs }: Words, frame: Box, look: PictureLook): SceneNode[] {
  const theme = THEMES[look.theme];
  const [width, height] = [frame.right - frame.left, frame.bottom - frame.top];
  const block = (
    index: number,
    sizePx: number,
    first: number,
    { text = paragraphs[index]!.text, mostLines }: { text?: string; mostLines?: number } = {},
  ): CardBlock => {
    const { quiet } = paragraphs[index]!;
    const isFirst = index === 0 && !quiet;
    const size = Math.max(look.text, (isFirst ? first : quiet ? QUIET : 1) * sizePx);
    const words = {
      text: partsHeld(text),
      sizePx: size,
      face: isFirst ? ('serif' as const) : ('sans' as const),
      colour: quiet ? theme.softInk : theme.ink,
    };
    const { heightPx, isCut, draw } = textBlock(words, Math.min(width, LONGEST_LINE_EM * size), mostLines);
    return { heightPx, isCut, draw: (left, top) => [partOf(draw(left, top))] };
  };
  const every = paragraphs.map((_, index) => index);
  const steps = Math.round((LARGEST - 1) / STEP);
  const scales = Array.from({ length: steps + 1 }, (_, step) => [LARGEST - step * STEP, FIRST] as const);
  for (const [scale, first] of [...scales, [1, 1] as const]) {
    const sizePx = scale * look.text;
    const all = stacked(
      every.map((index) => block(index, sizePx, first)),
      GAP_EM * sizePx,
    );
    if (all.heightPx <= height) return all.draw(frame.left, frame.top + ABOVE * (height - all.heightPx));
  }
  for (let count = paragraphs.length; count > 0; count -= 1) {
    const before = every.slice(0, count - 1).map((index) => block(index, look.text, 1));
    const used = stacked(before, GAP_EM * look.text).heightPx + (count > 1 ? GAP_EM * look.text : 0);
    const line = block(count - 1, look.text, 1, { mostLines: 1 }).heightPx;
    const mostLines = Math.floor((height - used) / line);
    if (mostLines < 1) continue;
    const { text } = paragraphs[count - 1]!;
    const fits = (part: string) => !block(count - 1, look.text, 1, { text: part, mostLines }).isCut;
    const said = fits(text) ? text : clauseThatFits(text, fits, LEAST_CLAUSE * text.length);
    if (said === null && count > 1) continue;
    const last = block(count - 1, look.text, 1, { text: said ?? text, mostLines });
    return stacked([...before, last], GAP_EM * look.text).draw(frame.left, frame.top);
  }
  return [];
}
