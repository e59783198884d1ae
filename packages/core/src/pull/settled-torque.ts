import { DEVIATION_FROM_MAD, medianAbsoluteDeviation } from '../numeric/median.ts';
import { fitPolynomial, polynomialAt } from '../numeric/polynomial-fit.ts';
import type { SweepRun } from './sweep-run.ts';

/** Where a trend is taken from, r/min inward of the row in question. It sets no cut: what is cut depends on the torque alone. */
interface TrendRange {
  nearestRpm: number;
  furthestRpm: number;
  /** Share of the trend that torque may be off it. */
  allowedShare: number;
}
/** Torque comes up slowly: a trend from right beside the row would come up with it. */
const AHEAD_OF_START: TrendRange = { nearestRpm: 150, furthestRpm: 450, allowedShare: 0.02 };
/** Torque falls away at once. */
const BEFORE_END: TrendRange = { nearestRpm: 0, furthestRpm: 300, allowedShare: 0.05 };
/** How far into the sweep a torque that has yet to settle is looked for; beyond it a step is the engine's own. */
const SEARCH_RPM = 500;
const ROWS_IN_A_ROW = 3;
/** Of a log with more rows within a trend's range, every second, third … row is looked at: so many say where a line lies. */
const MOST_ROWS_OF_A_TREND = 200;

export interface Unsettled {
  /** First (start) or last (end) row that holds. */
  row: number;
  /** Torque and trend, inside unit, at the worst row that was cut. */
  torque: number;
  trend: number;
}

/**
 * First row of a sweep whose torque has settled after the throttle opened. Goes backward from rows that have settled, as
 * long as torque keeps within 2 % (or four times its own scatter) of the straight trend of rows 150 to 450 r/min on.
 * `null`: settled from the first row, or too few rows to tell.
 */
export function settledStart(run: SweepRun, speedRpm: Float64Array, torque: Float64Array): Unsettled | null {
  return settledOf(run, speedRpm, torque, 'start', AHEAD_OF_START);
}

/** Last row of a sweep before torque falls away from its trend and stays away: a closing throttle without a throttle channel. */
export function loadedEnd(run: SweepRun, speedRpm: Float64Array, torque: Float64Array): Unsettled | null {
  return settledOf(run, speedRpm, torque, 'end', BEFORE_END);
}

function settledOf(
  run: SweepRun,
  speedRpm: Float64Array,
  torque: Float64Array,
  side: 'start' | 'end',
  range: TrendRange,
): Unsettled | null {
  const span = Math.abs(speedRpm[run.toRow]! - speedRpm[run.fromRow]!);
  const rowsOfTrend = ((run.toRow - run.fromRow) * (range.furthestRpm - range.nearestRpm)) / span;
  const every = Math.ceil(rowsOfTrend / MOST_ROWS_OF_A_TREND);
  if (!(every > 1)) return settled(run, speedRpm, torque, side, range);
  // Counted from the edge in question, which is looked at itself.
  const count = Math.floor((run.toRow - run.fromRow) / every) + 1;
  const first = side === 'start' ? run.fromRow : run.toRow - (count - 1) * every;
  const thinned = (series: Float64Array) =>
    Float64Array.from({ length: count }, (_, place) => series[first + place * every]!);
  const ends = { ...run, fromRow: 0, toRow: count - 1 };
  const found = settled(ends, thinned(speedRpm), thinned(torque), side, range);
  return found && { ...found, row: first + found.row * every };
}

function settled(
  run: SweepRun,
  speedRpm: Float64Array,
  torque: Float64Array,
  side: 'start' | 'end',
  range: TrendRange,
): Unsettled | null {
  const [edge, inner, step] = side === 'start' ? [run.fromRow, run.toRow, -1] : [run.toRow, run.fromRow, 1];
  const span = Math.abs(speedRpm[inner]! - speedRpm[edge]!);
  const search = Math.min(SEARCH_RPM, span / 2);
  let row = edge;
  while (row !== inner && Math.abs(speedRpm[row]! - speedRpm[edge]!) < search) row -= step;
  let off: { row: number; torque: number; trend: number }[] = [];
  for (; row !== edge + step; row += step) {
    if (!Number.isFinite(torque[row]!) || !Number.isFinite(speedRpm[row]!)) continue;
    const trend = trendAt(row, -step, inner, range, speedRpm, torque, off);
    if (trend === null) continue;
    const away = torque[row]! - trend.value;
    const limit = Math.max(range.allowedShare * Math.abs(trend.value), 4 * trend.deviation);
    const leaves = side === 'start' ? Math.abs(away) > limit : away < -limit;
    if (leaves) off.push({ row, torque: torque[row]!, trend: trend.value });
    // A row that is back on the trend shows that the rows before it were a spike, not the end of the load.
    else off = [];
  }
  if (off.length < ROWS_IN_A_ROW) return null;
  const worst = off.reduce((a, b) => (Math.abs(b.torque - b.trend) > Math.abs(a.torque - a.trend) ? b : a));
  return { row: off[0]!.row - step, torque: worst.torque, trend: worst.trend };
}

/** The trend of the rows on the inner side of `row`, carried to it; rows already found off it do not count. */
function trendAt(
  row: number,
  inward: number,
  inner: number,
  range: TrendRange,
  speedRpm: Float64Array,
  torque: Float64Array,
  off: readonly { row: number }[],
): { value: number; deviation: number } | null {
  const last = off.at(-1)?.row;
  const firstOff = off[0]?.row;
  const anchor = firstOff === undefined || last === undefined ? row : firstOff;
  const x: number[] = [];
  const y: number[] = [];
  for (let next = anchor + inward; next !== inner + inward; next += inward) {
    const distance = Math.abs(speedRpm[next]! - speedRpm[anchor]!);
    if (distance > range.furthestRpm) break;
    if (!(distance >= range.nearestRpm) || !Number.isFinite(torque[next]!)) continue;
    x.push(speedRpm[next]!);
    y.push(torque[next]!);
  }
  if (x.length < 5) return null;
  const first = fitPolynomial(x, y, 1);
  if (first === null) return null;
  const residuals = y.map((value, i) => value - polynomialAt(first, x[i]!));
  const deviation = DEVIATION_FROM_MAD * medianAbsoluteDeviation(residuals);
  const near = residuals.map((residual) => Math.abs(residual) <= 3 * deviation || deviation === 0);
  const again =
    fitPolynomial(
      x.filter((_, i) => near[i]),
      y.filter((_, i) => near[i]),
      1,
    ) ?? first;
  return { value: polynomialAt(again, speedRpm[row]!), deviation };
}
