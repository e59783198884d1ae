import { heightAt } from './clip.ts';
import { endMark } from './end-mark.ts';
import type { ChartDescription, DrawSize, SceneNode, StackGeometry } from './model.ts';
import { drawnStyle } from './palette.ts';
import { proportionsFor } from './proportions.ts';
import { element, px, straight, textAt } from './scene-node.ts';
import { textWidth } from './text-width.ts';
import { THEMES } from './theme.ts';
import { pointText } from './zoom.ts';

/**
 * The cursor laid over a drawn stack: a hair through every panel, each mean curve's own mark where the hair meets it,
 * and the speed in the lane above the panels, where it covers no figure. A cursor outside the shown range is nothing.
 */
export function drawCursor(
  chart: ChartDescription,
  geometry: StackGeometry,
  atX: number,
  size: DrawSize,
): SceneNode[] {
  const [low, high] = geometry.xRange;
  if (!(atX >= low && atX <= high) || high === low) return [];
  const { text, hairline, mark, title, cursorLane } = proportionsFor(size);
  const theme = THEMES[size.theme];
  const x = geometry.left + ((atX - low) / (high - low)) * (geometry.right - geometry.left);
  const laneMiddle = geometry.top - title - cursorLane / 2;
  const pillHalf = 0.75 * text;

  const between = straight(x, laneMiddle + pillHalf, x, geometry.bottom, {
    colour: theme.ink,
    widthPx: hairline,
    opacity: 0.3,
  });
  const panels = geometry.panels.flatMap((place) => {
    const panel = chart.panels.find(({ id }) => id === place.id);
    const [bottomValue, topValue] = place.yRange;
    const yAt = (value: number) =>
      place.bottom - ((value - bottomValue) / (topValue - bottomValue)) * (place.bottom - place.top);
    const dots = (panel?.lines ?? []).flatMap((line) => {
      const height = line.weight === 'mean' ? heightAt(line.x, line.y, atX) : null;
      if (height === null) return [];
      const { colour, mark: shape } = drawnStyle(line.style, size.theme);
      return [endMark(shape, x, yAt(height), { colour, ground: theme.card, radiusPx: mark * 1.15 })];
    });
    return [straight(x, place.top, x, place.bottom, { colour: theme.ink, widthPx: hairline }), ...dots];
  });

  const figure = pointText(chart, atX);
  const width = textWidth(figure, text, 'sansStrong') + 1.1 * text;
  const pillLeft = Math.max(0, Math.min(x - width / 2, size.width - width));
  return [
    between,
    ...panels,
    element('rect', {
      x: px(pillLeft),
      y: px(laneMiddle - pillHalf),
      width: px(width),
      height: px(2 * pillHalf),
      rx: px(0.3 * text),
      fill: theme.ink,
    }),
    textAt(pillLeft + width / 2, laneMiddle + 0.36 * text, figure, {
      sizePx: text,
      face: 'sansStrong',
      colour: theme.card,
      anchor: 'middle',
    }),
  ];
}
