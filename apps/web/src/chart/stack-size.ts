import type { ChartDescription, DrawSize, ThemeName } from '@pullbook/charts';

/** Below this the panels take the whole width and proportions of their own. */
const NARROW = 560;

/** How big a stack is drawn in a column of this width: panels of a readable height each, whatever their number. */
export function stackSize(chart: ChartDescription, width: number, theme: ThemeName): DrawSize {
  const shares = chart.panels.reduce((sum, panel) => sum + panel.share, 0);
  const perShare = width < NARROW ? 150 : Math.min(190, Math.max(120, width * 0.15));
  const aroundPanels = width < NARROW ? 96 : 72;
  return {
    width,
    height: Math.round(aroundPanels + perShare * shares),
    text: 13,
    theme,
    ground: false,
  };
}
