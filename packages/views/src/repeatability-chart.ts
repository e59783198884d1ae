import type { ChartDescription } from '@pullbook/charts';
import type { Repeatability } from '@pullbook/core/shop';
import { dayText } from './date.ts';
import type { ViewOptions } from './model.ts';
import { kindName } from './shop-figures.ts';
import { showingIn } from './showing.ts';

/** Whole months from the year 0. */
const monthNumber = (month: string): number => 12 * Number(month.slice(0, 4)) + Number(month.slice(5, 7));

/** Lines that can still be told apart. */
const MOST_LINES = 6;

/**
 * Scatter of pulls month by month, a line for each kind of engine and cell; the kinds repeated most. `null`: no repeats, or
 * all of one month, which is no picture over time.
 */
export function repeatabilityChart(
  all: readonly Repeatability[],
  options: ViewOptions,
): ChartDescription | null {
  const drawn = all
    .filter(({ overTime }) => overTime.length > 0)
    .toSorted((one, other) => other.clusters - one.clusters)
    .slice(0, MOST_LINES);
  const months = drawn.flatMap(({ overTime }) => overTime.map(({ month }) => month)).toSorted();
  const [first, last] = [months[0], months.at(-1)];
  if (first === undefined || last === undefined || first === last) return null;
  const show = showingIn(options);
  const newest = monthNumber(last);
  const reach = monthNumber(first) - newest;
  const monthWords = (month: string): string => dayText(`${month}-01`).replace(/^1 /, '');
  return {
    xTitle: 'Months',
    xUnit: 'back',
    xRange: [reach, 0],
    xWindow: null,
    panels: [
      {
        id: 'scatter',
        title: 'Scatter of pulls',
        unit: '%',
        note: `one standard deviation; 0 is ${monthWords(last)}`,
        decimals: 1,
        share: 1,
        zeroLine: true,
        lines: drawn.map((one, at) => ({
          id: kindName(one),
          style: { combination: at },
          weight: 'mean',
          x: one.overTime.map(({ month }) => monthNumber(month) - newest),
          y: one.overTime.map(({ sigma }) => Math.round(sigma * 1e5) / 1e3),
          label: { key: kindName(one), name: '', value: null },
        })),
        bands: [],
        marks: drawn.flatMap((one, at) =>
          one.overTime.map(({ month, sigma }) => ({
            style: { combination: at },
            x: monthNumber(month) - newest,
            y: Math.round(sigma * 1e5) / 1e3,
            text: '',
            stillClimbing: false,
          })),
        ),
      },
    ],
    decimalMark: options.decimalMark,
    alternative: `Scatter of pulls by month, ${monthWords(first)} to ${monthWords(last)}. ${drawn
      .map((one) => {
        const newestMonth = one.overTime.at(-1)!;
        return `${kindName(one)}: ${show.perCent(newestMonth.sigma, { decimals: 2 })} in ${monthWords(newestMonth.month)}.`;
      })
      .join(' ')}`,
  };
}
