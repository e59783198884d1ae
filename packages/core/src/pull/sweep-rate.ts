import { localSlope } from '../numeric/local-slope.ts';
import { median } from '../numeric/median.ts';
import { maskOf, runsOf } from '../numeric/runs.ts';
import { figureOf, numberFigure, speedFigure } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import { type SweepRun, type SweepTrace, slopeHalfWindow } from './sweep-run.ts';

type Rows = Pick<SweepRun, 'fromRow' | 'toRow'>;

/** A slope further from its median than this, for longer than the span below, makes a pull doubtful (common practice, no source). */
const EVEN_SHARE = 0.25;
const UNEVEN_SPAN_RPM = 150;

/** Rate of the sweep at each row of the window, r/min per unit of the clock; negative for a falling sweep. */
export function sweepRates(trace: SweepTrace, rows: Rows): Float64Array {
  const clock = trace.clock.subarray(rows.fromRow, rows.toRow + 1);
  return localSlope(clock, trace.speedRpm.subarray(rows.fromRow, rows.toRow + 1), slopeHalfWindow(trace));
}

/** One caution for each stretch of more than 150 r/min whose slope leaves the median by more than a quarter. */
export function unevenSweep(trace: SweepTrace, rows: Rows, rates: Float64Array): Remark[] {
  const typical = median(rates);
  const uneven = maskOf(rates, (rate) => Math.abs(rate - typical) > EVEN_SHARE * Math.abs(typical));
  const { clockIsTime } = trace;
  const slope = (rate: number) =>
    clockIsTime ? figureOf(rate, 'sweepRate') : said`${numberFigure(rate, 0)} rpm a row`;
  const bare = (rate: number) => numberFigure(rate, 0);
  return runsOf(uneven).flatMap((run) => {
    const from = trace.speedRpm[rows.fromRow + run.fromRow]!;
    const to = trace.speedRpm[rows.fromRow + run.toRow]!;
    if (!(Math.abs(to - from) > UNEVEN_SPAN_RPM)) return [];
    const rate = median(rates.subarray(run.fromRow, run.toRow + 1));
    return [
      remark(
        'caution',
        'uneven-sweep',
        said`From ${speedFigure(from)} to ${speedFigure(to)} the speed moves at ${slope(rate)}, the whole pull at ${bare(typical)}. More than a quarter off over more than 150 rpm makes torque there doubtful: look at the brake's control.`,
      ),
    ];
  });
}
