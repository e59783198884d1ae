import { median } from '../numeric/median.ts';
import type { RowRun } from '../numeric/runs.ts';
import { figureOf, numberFigure, percentFigure, speedRange } from '../quantity/index.ts';
import { type Figure, type Said, said } from '../remark/index.ts';
import type { Cut } from './model.ts';
import type { SweepRun, SweepTrace } from './sweep-run.ts';
import { cutOf } from './wording.ts';

/** Collects why rows before and after the accepted ones are not counted. */
export class CutList {
  startReason: Said = said``;
  endReason: Said = said``;

  private readonly rowCount: number;
  private readonly trace: SweepTrace;
  private readonly throttle: Float64Array | null;
  private readonly open: RowRun;
  private readonly sweep: SweepRun;

  constructor(
    rowCount: number,
    trace: SweepTrace,
    throttle: Float64Array | null,
    stretches: readonly RowRun[],
    sweep: SweepRun,
  ) {
    this.rowCount = rowCount;
    this.trace = trace;
    this.throttle = throttle;
    this.sweep = sweep;
    this.open = stretches.find((run) => run.fromRow <= sweep.fromRow && run.toRow >= sweep.toRow)!;
  }

  around(rows: RowRun, windowRpm: [number, number] | null): Cut[] {
    const hand =
      windowRpm === null
        ? null
        : said`outside the window set by hand, ${speedRange(windowRpm[0], windowRpm[1])}`;
    const cuts: Cut[] = [];
    const cut = (fromRow: number, toRow: number, why: Said) => {
      if (toRow >= fromRow) cuts.push(cutOf(fromRow, toRow, why));
    };
    const { open, sweep } = this;
    const before = Math.min(open.fromRow, rows.fromRow);
    cut(0, before - 1, said`throttle at ${this.throttleText(0, before - 1)}, not yet open`);
    const waiting = Math.max(before, Math.min(sweep.fromRow, rows.fromRow));
    cut(before, waiting - 1, hand ?? said`speed not yet sweeping: ${this.rateText(before, waiting - 1)}`);
    cut(waiting, rows.fromRow - 1, hand ?? this.startReason);
    const slowing = Math.min(open.toRow, Math.max(sweep.toRow, rows.toRow));
    cut(rows.toRow + 1, slowing, hand ?? this.endReason);
    cut(
      slowing + 1,
      open.toRow,
      hand ?? said`speed no longer sweeping: ${this.rateText(slowing + 1, open.toRow)}`,
    );
    cut(
      Math.max(open.toRow, rows.toRow) + 1,
      this.rowCount - 1,
      said`throttle at ${this.throttleText(Math.max(open.toRow, rows.toRow) + 1, this.rowCount - 1)}, no longer open`,
    );
    return cuts;
  }

  private throttleText(fromRow: number, toRow: number): Figure | string {
    if (this.throttle === null || toRow < fromRow) return '';
    return percentFigure(median(this.throttle.subarray(fromRow, toRow + 1)));
  }

  private rateText(fromRow: number, toRow: number): Said {
    const { speedRpm, clock, clockIsTime } = this.trace;
    const rate =
      toRow === fromRow
        ? speedRpm[toRow]! - speedRpm[Math.max(0, toRow - 1)]!
        : (speedRpm[toRow]! - speedRpm[fromRow]!) / (clock[toRow]! - clock[fromRow]!);
    const sign = this.sweep.direction === 'rising' ? 1 : -1;
    const slope = clockIsTime ? figureOf(rate, 'sweepRate') : said`${numberFigure(rate, 0)} rpm a row`;
    return said`${slope} against ${numberFigure(sign * this.sweep.rate, 0)} in the sweep`;
  }
}
