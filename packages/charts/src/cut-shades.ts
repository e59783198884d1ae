import type { ChartDescription, SceneNode } from './model.ts';
import type { Proportions } from './proportions.ts';
import { element, px, textAt } from './scene-node.ts';
import { spread } from './spread.ts';
import type { StackLayout } from './stack-layout.ts';
import { straightScale } from './straight-scale.ts';
import { textWidth } from './text-width.ts';
import type { Theme } from './theme.ts';

type Across = Pick<StackLayout, 'left' | 'right'>;

/** The cuts that can be seen, from pixel to pixel. */
function cutsShown({ xCuts = [], xRange }: ChartDescription, { left, right }: Across) {
  const xAt = straightScale(xRange, [left, right]);
  return xCuts
    .filter(({ range: [low, high] }) => high > xRange[0] && low < xRange[1])
    .map(({ range: [low, high], label }) => ({
      label,
      from: xAt(Math.max(low, xRange[0])),
      to: xAt(Math.min(high, xRange[1])),
    }));
}

/** What is not counted lies in the shade, in one panel. */
export function drawCutShades(
  chart: ChartDescription,
  across: Across,
  { top, bottom }: { top: number; bottom: number },
  { softInk }: Theme,
): SceneNode[] {
  return cutsShown(chart, across).map(({ from, to }) =>
    element('rect', {
      x: px(from),
      y: px(top),
      width: px(to - from),
      height: px(bottom - top),
      fill: softInk,
      'fill-opacity': 0.12,
    }),
  );
}

/** The cuts' numbers in the top panel: the list beside the chart says the reasons by them. */
export function drawCutNumbers(
  chart: ChartDescription,
  { left, right, panels }: Across & Pick<StackLayout, 'panels'>,
  { text, compact }: Proportions,
  { ink }: Theme,
): SceneNode[] {
  const cuts = cutsShown(chart, { left, right });
  const top = panels[0]?.top;
  if (top === undefined || compact) return [];
  const widths = cuts.map(({ label }) => textWidth(label, text, 'sansStrong') + 0.5 * text);
  const centres = spread(
    cuts.map(({ from, to }) => (from + to) / 2),
    widths,
    [left, right],
  );
  return cuts.map(({ label }, index) =>
    textAt(centres[index]!, top + text, label, {
      sizePx: text,
      face: 'sansStrong',
      colour: ink,
      anchor: 'middle',
    }),
  );
}
