import { drawBadgesCard } from './badges-card.ts';
import type { Box } from './columns.ts';
import { drawFactsCard } from './facts-card.ts';
import type { PictureBody, SceneNode } from './model.ts';
import type { PictureLook } from './picture-look.ts';
import { drawBigNumber } from './picture-number.ts';
import { drawPictureStack } from './picture-stack.ts';
import { drawTableCard } from './table-card.ts';
import { drawWordsCard } from './words-card.ts';

/** What a still shows under its words, within a frame. */
export function drawBody(body: PictureBody, frame: Box, look: PictureLook): SceneNode[] {
  switch (body.kind) {
    case 'stack':
      return drawPictureStack(body.chart, frame, look).nodes;
    case 'number':
      return drawBigNumber(body, frame, look);
    case 'table':
      return drawTableCard(body, frame, look);
    case 'facts':
      return drawFactsCard(body, frame, look);
    case 'badges':
      return drawBadgesCard(body, frame, look);
    case 'words':
      return drawWordsCard(body, frame, look);
  }
}
