import { type CardTry, drawInColumns } from './card-columns.ts';
import { type CardBlock, stacked, textBlock } from './card-text.ts';
import type { Box } from './columns.ts';
import type { PictureBody, SceneNode } from './model.ts';
import type { PictureLook } from './picture-look.ts';
import { element, px, strokedPath } from './scene-node.ts';
import { THEMES } from './theme.ts';

type Badges = Extract<PictureBody, { kind: 'badges' }>;
type Badge = Badges['badges'][number];

const MARK_EM = 0.62;
const AFTER_MARK_EM = 1.9;
/** Of the reasons, from all to none: what was earned needs none first. */
const MOST_LINES = [
  { earned: 5, not: 5 },
  { earned: 0, not: 5 },
  { earned: 0, not: 2 },
  { earned: 0, not: 0 },
] as const;

/**
 * What an honest comparison can show for itself: an earned badge has a full mark with a tick, one that is not an empty ring; each
 * says why. Where there is no room for all, those that are earned say none, then the others are brief, then say none; then those that are not earned leave, from the end.
 */
export function drawBadgesCard({ badges }: Badges, frame: Box, look: PictureLook): SceneNode[] {
  return drawInColumns(
    {
      items: badges,
      blockOf: (badge, at) => badgeBlock(badge, at, look),
      mostBrevity: MOST_LINES.length - 1,
      leaveFirst: (shown) => {
        const last = shown.findLastIndex(({ earned }) => !earned);
        return last < 0 ? shown.length - 1 : last;
      },
      leftOut: (gone) => `and ${gone.length} more`,
    },
    frame,
    look,
  );
}

function badgeBlock(badge: Badge, { sizePx, widthPx, brevity }: CardTry, look: PictureLook): CardBlock {
  const theme = THEMES[look.theme];
  const most = MOST_LINES[brevity]![badge.earned ? 'earned' : 'not'];
  const room = widthPx - AFTER_MARK_EM * sizePx;
  const words = stacked(
    [
      textBlock(
        {
          text: badge.label,
          sizePx,
          face: 'sansStrong',
          colour: badge.earned ? theme.ink : theme.softInk,
        },
        room,
        Math.max(1, most),
      ),
      textBlock(
        { text: badge.why, sizePx: Math.max(look.text, 0.85 * sizePx), face: 'sans', colour: theme.softInk },
        room,
        most,
      ),
    ],
    0.05 * sizePx,
  );
  return {
    heightPx: words.heightPx,
    isCut: words.isCut,
    draw: (left, top) => [
      ...badgeMark(badge.earned, left + MARK_EM * sizePx, top + 0.66 * sizePx, sizePx, look),
      ...words.draw(left + AFTER_MARK_EM * sizePx, top),
    ],
  };
}

function badgeMark(earned: boolean, x: number, y: number, sizePx: number, look: PictureLook): SceneNode[] {
  const theme = THEMES[look.theme];
  const radius = MARK_EM * sizePx;
  const line = 0.1 * sizePx;
  const ring = {
    cx: px(x),
    cy: px(y),
    r: px(radius - line / 2),
    stroke: earned ? theme.ink : theme.softInk,
    'stroke-width': px(line),
    fill: earned ? theme.ink : theme.paper,
  };
  if (!earned) return [element('circle', ring)];
  const at = (dx: number, dy: number) => `${px(x + dx * radius)},${px(y + dy * radius)}`;
  return [
    element('circle', ring),
    strokedPath(`M${at(-0.45, 0.02)}L${at(-0.12, 0.36)}L${at(0.46, -0.32)}`, {
      colour: theme.paper,
      widthPx: 0.15 * sizePx,
    }),
  ];
}
