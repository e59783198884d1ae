import type { Box } from './columns.ts';
import type { ChartDescription, SceneNode, StackGeometry } from './model.ts';
import type { PictureLook } from './picture-look.ts';
import { type Proportions, proportionsFor } from './proportions.ts';
import { drawStackIn } from './stack.ts';
import { layoutStack } from './stack-layout.ts';

/** A panel lower than this, in heights of text, shows nothing. */
const LEAST_PANEL = 3.4;
/** On a narrow picture, where two low ones would say less than a high one. */
const LEAST_NARROW_PANEL = 5;
/** On a narrow picture the window's line is worth its lane only above panels of this height: the subline says it too. */
const LEAST_UNDER_WINDOW = 7;
/** Names on top take no more of the frame than this, on a tall one with room for their figures too. */
const MOST_NAMES_SHARE = { wide: 0.24, square: 0.24, tall: 0.32, thumbnail: 0.24 } as const;

/** Proportions of a stack in a still: on a tall or square one no room is spent on what its words say already. */
export function pictureProportions(look: PictureLook, frame: Box): Proportions {
  const own = { ...proportionsFor({ ...look.still, text: look.text }), text: look.text };
  const { text, row, narrow } = own;
  const height = frame.bottom - frame.top;
  const mostNameRows = Math.max(1, Math.floor((MOST_NAMES_SHARE[look.shape] * height) / (1.15 * row)));
  if (!narrow) return { ...own, mostNameRows };
  return {
    ...own,
    titleBelow: false,
    ticks: 1.75 * text,
    mostNameRows,
    valuesOnTop: true,
    sample: 1.5 * text,
    meanLine: 0.15 * text,
    pullLine: 0.06 * text,
    mark: 0.28 * text,
    labelGap: 0.8 * text,
  };
}

/** What of a chart can be read in its frame: the window's line leaves first on a narrow one, then the last panels. */
function asFarAsItFits(chart: ChartDescription, frame: Box, proportions: Proportions): ChartDescription {
  const { text, narrow } = proportions;
  const windows = narrow && chart.xWindow ? [chart.xWindow, null] : [chart.xWindow];
  for (let count = chart.panels.length; count > 1; count -= 1) {
    for (const xWindow of windows) {
      const shown = { ...chart, panels: chart.panels.slice(0, count), xWindow };
      const least = (narrow ? (xWindow ? LEAST_UNDER_WINDOW : LEAST_NARROW_PANEL) : LEAST_PANEL) * text;
      const { panels } = layoutStack(shown, frame, proportions, false);
      if (panels.every(({ top, bottom }) => bottom - top >= least)) return shown;
    }
  }
  const first = { ...chart, panels: chart.panels.slice(0, 1) };
  const [panel] = layoutStack(first, frame, proportions, false).panels;
  const isHigh = panel !== undefined && panel.bottom - panel.top >= LEAST_UNDER_WINDOW * text;
  return { ...first, xWindow: narrow && !isHigh ? null : chart.xWindow };
}

/** A stack of panels as the middle of a still, and where it lies. */
export function drawPictureStack(
  chart: ChartDescription,
  frame: Box,
  look: PictureLook,
): { nodes: SceneNode[]; geometry: StackGeometry } {
  const proportions = pictureProportions(look, frame);
  const shown = asFarAsItFits(chart, frame, proportions);
  return drawStackIn(shown, frame, { ...look, proportions }, false);
}
