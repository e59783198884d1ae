import type { ChartDescription, SceneNode, ThemeName } from './model.ts';
import type { Proportions } from './proportions.ts';
import { straight, textAt } from './scene-node.ts';
import type { LaidPanel, StackLayout } from './stack-layout.ts';
import type { StackMotion } from './stack-motion.ts';
import { straightScale } from './straight-scale.ts';
import { shortened, textWidth } from './text-width.ts';
import { THEMES } from './theme.ts';

export interface DrawingLook {
  theme: ThemeName;
  /** Colour of the ground, for the rings round marks, on a transparent ground too. */
  ground: string;
  /** Laid over another picture: grid and rules must show on any ground. */
  overlay: boolean;
  proportions: Proportions;
  /** How far the lines have drawn themselves; missing: all is there. */
  motion?: StackMotion | undefined;
}

/** What stands round a panel's curves: its title with unit and note, its grid, its figures. */
export function panelFrame(
  chart: ChartDescription,
  layout: StackLayout,
  { prepared, top, bottom, axis, tickTexts }: LaidPanel,
  look: DrawingLook,
): { titles: SceneNode[]; grid: SceneNode[]; ticks: SceneNode[] } {
  const { text, hairline, narrow } = look.proportions;
  const theme = THEMES[look.theme];
  const { left, right } = layout;
  const xAt = straightScale(chart.xRange, [left, right]);
  const yAt = straightScale(axis.range, [bottom, top]);

  const title = prepared.panel.title;
  const titleBaseline = top - 0.55 * text;
  const titleWidth = textWidth(title, text, 'sansStrong');
  const unit = [prepared.panel.unit, prepared.panel.note].filter((part) => part !== '').join(', ');
  const titleRight = narrow ? layout.frame.right : right;
  const shownUnit = shortened(unit, titleRight - left - titleWidth - 0.5 * text, text, 'sans');
  const titles = [
    textAt(left, titleBaseline, title, { sizePx: text, face: 'sansStrong', colour: theme.ink }),
    ...(shownUnit === ''
      ? []
      : [
          textAt(left + titleWidth + 0.5 * text, titleBaseline, shownUnit, {
            sizePx: text,
            face: 'sans',
            colour: theme.softInk,
          }),
        ]),
  ];

  const gridLook = look.overlay
    ? { colour: theme.softInk, widthPx: hairline, opacity: 0.35 }
    : { colour: theme.grid, widthPx: hairline };
  const grid = [
    ...layout.xAxis.ticks.map((tick) => straight(xAt(tick), top, xAt(tick), bottom, gridLook)),
    ...axis.ticks.map((tick) => straight(left, yAt(tick), right, yAt(tick), gridLook)),
    straight(
      left,
      bottom,
      right,
      bottom,
      look.overlay ? gridLook : { colour: theme.rule, widthPx: hairline },
    ),
  ];
  const tickLook = { sizePx: text, face: 'sans', colour: theme.softInk, anchor: 'end' } as const;
  const ticks = axis.ticks.map((tick, index) =>
    textAt(left - 0.6 * text, yAt(tick) + 0.36 * text, tickTexts[index] ?? '', tickLook),
  );
  return { titles, grid, ticks };
}
