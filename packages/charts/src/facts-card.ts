import { type CardTry, drawInColumns } from './card-columns.ts';
import { type CardBlock, stacked, textBlock } from './card-text.ts';
import type { Box } from './columns.ts';
import type { PictureBody, SceneNode } from './model.ts';
import type { PictureLook } from './picture-look.ts';
import { element, px } from './scene-node.ts';
import { textWidth } from './text-width.ts';
import { THEMES } from './theme.ts';

type Facts = Extract<PictureBody, { kind: 'facts' }>;
type Fact = Facts['rows'][number];

const MOST_LABEL_SHARE = 0.4;
const MOST_LINES = [4, 2, 1];
const PAD_EM = 0.45;
const BAR_EM = 0.14;

/**
 * What a combination is made of. What changed has a bar before it, a tint behind it, strong letters, and says what it was. Where
 * there is no room for all, each gets one line, then what did not change leaves, from the end.
 */
export function drawFactsCard({ rows }: Facts, frame: Box, look: PictureLook): SceneNode[] {
  return drawInColumns(
    {
      items: rows,
      blockOf: (fact, at) => factBlock(fact, rows, at, look),
      mostBrevity: MOST_LINES.length - 1,
      leaveFirst: (facts) => {
        const last = facts.findLastIndex(({ isChanged }) => !isChanged);
        return last < 0 ? facts.length - 1 : last;
      },
      leftOut: (facts) =>
        facts.some(({ isChanged }) => isChanged)
          ? `and ${facts.length} more`
          : `and ${facts.length} more, not changed`,
    },
    frame,
    look,
  );
}

function factBlock(
  fact: Fact,
  all: readonly Fact[],
  { sizePx, widthPx, brevity }: CardTry,
  look: PictureLook,
): CardBlock {
  const theme = THEMES[look.theme];
  const most = MOST_LINES[brevity]!;
  const pad = PAD_EM * sizePx;
  const widest = Math.max(0, ...all.map(({ label }) => textWidth(label, sizePx, 'sans')));
  const labelWidth = Math.min(widest, MOST_LABEL_SHARE * widthPx);
  const textLeft = pad + labelWidth + 0.9 * sizePx;
  const room = widthPx - textLeft - pad;
  const label = textBlock(
    { text: fact.label, sizePx, face: 'sans', colour: fact.isChanged ? theme.ink : theme.softInk },
    labelWidth,
    fact.isChanged ? most + 1 : most,
  );
  const what = stacked(
    [
      textBlock(
        { text: fact.text, sizePx, face: fact.isChanged ? 'sansStrong' : 'sans', colour: theme.ink },
        room,
        most,
      ),
      textBlock(
        {
          text: fact.isChanged && fact.before !== null ? `was ${fact.before}` : '',
          sizePx,
          face: 'sans',
          colour: theme.softInk,
        },
        room,
        most,
      ),
    ],
    0,
  );
  const inside = Math.max(label.heightPx, what.heightPx);
  const heightPx = inside + (fact.isChanged ? 0.5 * sizePx : 0);
  const lead = fact.isChanged ? 0.2 * sizePx : 0;
  return {
    heightPx,
    isCut: label.isCut || what.isCut,
    draw: (left, top) => [
      ...(fact.isChanged
        ? [
            element('rect', {
              x: px(left),
              y: px(top),
              width: px(widthPx),
              height: px(heightPx),
              fill: theme.quietChip,
            }),
            element('rect', {
              x: px(left),
              y: px(top),
              width: px(BAR_EM * sizePx),
              height: px(heightPx),
              fill: theme.ink,
            }),
          ]
        : []),
      ...label.draw(left + pad, top + lead),
      ...what.draw(left + textLeft, top + lead),
    ],
  };
}
