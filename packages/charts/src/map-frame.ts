import type { MapLayout } from './map-layout.ts';
import type { MapDescription, SceneNode } from './model.ts';
import type { Proportions } from './proportions.ts';
import { straight, textAt } from './scene-node.ts';
import { shortened, textWidth } from './text-width.ts';
import type { Theme } from './theme.ts';

/** Titles, grid and figures round a map. */
export function drawMapFrame(
  map: MapDescription,
  { frame, plot, xAxis, yAxis, xTexts, yTexts, xAt, yAt }: MapLayout,
  { text, hairline, compact }: Proportions,
  theme: Theme,
): SceneNode[] {
  const { left, right, top, bottom } = plot;
  const hair = { colour: theme.grid, widthPx: hairline };
  const soft = { sizePx: text, face: 'sans', colour: theme.softInk } as const;
  const titled = (title: string, more: string, baseline: number): SceneNode[] => {
    const after = left + textWidth(title, text, 'sansStrong') + 0.5 * text;
    return [
      textAt(left, baseline, title, { sizePx: text, face: 'sansStrong', colour: theme.ink }),
      ...(more === '' ? [] : [textAt(after, baseline, more, soft)]),
    ];
  };
  const roomBeside = (title: string) =>
    frame.right - left - textWidth(title, text, 'sansStrong') - 0.5 * text;
  // What the lines are, their labels tell too: it goes where it does not fit. A unit is shortened and stays.
  const note = textWidth(map.yNote, text, 'sans') <= roomBeside(map.yTitle) ? map.yNote : '';
  const unit = shortened(map.xUnit, roomBeside(map.xTitle), text, 'sans');
  return [
    ...titled(map.yTitle, note, top - 0.55 * text),
    ...xAxis.ticks.map((tick) => straight(xAt(tick), top, xAt(tick), bottom, hair)),
    ...yAxis.ticks.map((tick) => straight(left, yAt(tick), right, yAt(tick), hair)),
    straight(left, bottom, right, bottom, { colour: theme.rule, widthPx: hairline }),
    ...xAxis.ticks.map((tick, index) =>
      textAt(xAt(tick), bottom + 1.42 * text, xTexts[index] ?? '', { ...soft, anchor: 'middle' }),
    ),
    ...yAxis.ticks.map((tick, index) =>
      textAt(left - 0.6 * text, yAt(tick) + 0.36 * text, yTexts[index] ?? '', { ...soft, anchor: 'end' }),
    ),
    ...(compact ? [] : titled(map.xTitle, unit, bottom + 2.87 * text)),
  ];
}
