import type { ChartDescription } from '@pullbook/charts';

/** The same chart without the thin lines of some pulls. Means and gain stay: hiding is not rejecting. */
export function withoutPulls(chart: ChartDescription, pullIds: ReadonlySet<string>): ChartDescription {
  if (pullIds.size === 0) return chart;
  return {
    ...chart,
    panels: chart.panels.map((panel) => ({
      ...panel,
      lines: panel.lines.filter((line) => line.weight === 'mean' || !pullIds.has(line.id)),
    })),
  };
}
