import type { ChartDescription, LineStyle } from '@pullbook/charts';

/** What a person does not want to see on a chart: combinations by their place, pulls by their ids. */
export interface Hidden {
  combinations: ReadonlySet<number>;
  pulls: ReadonlySet<string>;
}

/**
 * The same chart without what is hidden: a combination with its mean, its pulls and its peaks; a pull with its thin line.
 * Gains stay, and no mean changes: hiding is not rejecting.
 */
export function withoutHidden(chart: ChartDescription, { combinations, pulls }: Hidden): ChartDescription {
  if (combinations.size === 0 && pulls.size === 0) return chart;
  const isShown = (style: LineStyle) => style === 'ink' || !combinations.has(style.combination);
  return {
    ...chart,
    panels: chart.panels.map((panel) => ({
      ...panel,
      lines: panel.lines.filter(
        ({ id, style, weight }) => isShown(style) && (weight === 'mean' || !pulls.has(id)),
      ),
      bands: panel.bands.filter(({ style }) => isShown(style)),
      marks: panel.marks.filter(({ style }) => isShown(style)),
    })),
  };
}
