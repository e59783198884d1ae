import { formatNumber } from '@pullbook/core/quantity';
import { heightAt } from './clip.ts';
import type { ChartDescription } from './model.ts';
import type { NameRows } from './name-rows.ts';
import type { PreparedLine, PreparedPanel } from './prepared.ts';
import { isDifference, type StackLayout } from './stack-layout.ts';
import { drawsItself, type StackMotion } from './stack-motion.ts';

/** Figures run in steps of about this share of the axis: some ten new ones a second can be read, a blur cannot. */
const FIGURE_STEP = 1 / 140;
const ROUND = [1, 2, 5, 10];

/** The last round value of the axis that has been passed: what running figures are read at. */
export function figurePlace({ xRange: [low, high] }: ChartDescription, until: number): number {
  const least = (high - low) * FIGURE_STEP;
  const power = 10 ** Math.floor(Math.log10(least));
  const step = power * (ROUND.find((round) => round * power >= least) ?? 10);
  return Math.max(low, Math.floor(until / step + 1e-9) * step);
}

/** What a line that draws itself has at its head, with its unit; `null`: it has not begun, is broken there, or is at its end. */
export function runningFigure(
  chart: ChartDescription,
  panel: PreparedPanel['panel'],
  { line, points, end }: PreparedLine,
  motion: StackMotion,
): string | null {
  if (!end || !drawsItself(line, motion) || motion.until >= end.x) return null;
  const height = heightAt(points.x, points.y, motion.until);
  if (height === null) return null;
  const read = heightAt(points.x, points.y, figurePlace(chart, motion.until)) ?? height;
  const number = formatNumber(read, panel.runningDecimals ?? panel.decimals, chart.decimalMark, {
    thousands: true,
    sign: isDifference(panel),
  });
  return `${number} ${panel.unit}`.trim();
}

/** The names on top of a narrow drawing: until a line is at its end its running figure stands where its last one will. */
export function runningNames(chart: ChartDescription, layout: StackLayout, motion: StackMotion): NameRows {
  const first = layout.panels[0]?.prepared;
  if (!first) return layout.names;
  const named = layout.names.named.map((name) => {
    const own = first.lines.find(({ line }) => line.label?.key === name.key);
    if (!name.value || !own?.end || !drawsItself(own.line, motion) || motion.until >= own.end.x) return name;
    const text = runningFigure(chart, first.panel, own, motion);
    return { ...name, value: text === null ? null : { ...name.value, text } };
  });
  return { ...layout.names, named };
}
