import { formatNumber } from '@pullbook/core/quantity';
import type { ChartDescription } from './model.ts';

/**
 * The same chart over less of its axis, as far as the two overlap; where they do not, the chart as it was. What lies
 * outside is not drawn and does not set the heights; the text for a screen reader says what is shown of what.
 *
 * @example zoomed(chart, [4000, 6500]).xRange
 */
export function zoomed(chart: ChartDescription, [from, to]: readonly [number, number]): ChartDescription {
  const [lowest, highest] = chart.xRange;
  const xRange: [number, number] = [Math.max(lowest, from), Math.min(highest, to)];
  if (!(xRange[0] < xRange[1])) return chart;
  if (xRange[0] === lowest && xRange[1] === highest) return chart;
  const shown = { ...chart, xRange };
  return { ...shown, alternative: `Shown: ${shownOf(shown, chart)}. ${chart.alternative}` };
}

/** `4,000 to 6,500 rpm of 2,500 to 6,500 rpm` */
export function shownOf(shown: ChartDescription, whole: ChartDescription): string {
  return `${rangeText(shown, shown.xRange)} of ${rangeText(whole, whole.xRange)}`;
}

/** A place of the chart's axis in words: `4,000 rpm`. */
export function pointText({ xUnit, xDecimals = 0, decimalMark }: ChartDescription, x: number): string {
  return `${formatNumber(x, xDecimals, decimalMark, { thousands: true })} ${xUnit}`.trim();
}

/** The same where it must stand for itself: `row 12` on an axis without a unit. */
export function placeText(chart: ChartDescription, x: number): string {
  const at = pointText(chart, x);
  return chart.xUnit === '' ? `${chart.xTitle.toLowerCase()} ${at}` : at;
}

/** A range of the chart's axis in words: `4,000 to 6,500 rpm`. */
export function rangeText(
  { xUnit, xDecimals = 0, decimalMark }: Pick<ChartDescription, 'xUnit' | 'xDecimals' | 'decimalMark'>,
  [low, high]: readonly [number, number],
): string {
  const number = (value: number) => formatNumber(value, xDecimals, decimalMark, { thousands: true });
  return `${number(low)} to ${number(high)} ${xUnit}`.trim();
}
