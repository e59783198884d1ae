import { extentOf } from '../numeric/extent.ts';
import { median, runningMedian } from '../numeric/median.ts';
import type { RowRun } from '../numeric/runs.ts';
import { percentFigure, speedFigure, speedRange } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import { CutList } from './cut-list.ts';
import { kindOfRows } from './kind-of-rows.ts';
import { usableTime } from './lag.ts';
import type { AcceptanceWindow, Channel, ChannelMeaning } from './model.ts';
import { openThrottleStretches } from './open-throttle.ts';
import { pointsWindow } from './points-window.ts';
import { loadedEnd, settledStart } from './settled-torque.ts';
import { findStaircase, type Hold } from './staircase.ts';
import { staircaseWindow } from './staircase-window.ts';
import { sweepRates, unevenSweep } from './sweep-rate.ts';
import { findSweep, type SweepRun, type SweepTrace } from './sweep-run.ts';

export interface WindowOptions {
  /** Hand-set, r/min; missing or `null`: found. */
  windowRpm?: [low: number, high: number] | null;
}

export interface FoundWindow {
  window: AcceptanceWindow | null;
  /** Held speeds of a step test logged throughout, whose settled rows are its points; missing: it is none. */
  holds?: Hold[];
  remarks: Remark[];
}

/**
 * The rows of a pull that count, and why the others do not. The start is where the throttle is open, the speed sweeps and
 * torque has settled; the end is where throttle, slope of speed or torque says so, never a fixed width. A hand-set window
 * takes the place of the settling and closing rules, not of the sweep's direction. Falling sweeps are accepted and named.
 * A log that holds speeds in steps is a step test: its held speeds count.
 */
export function acceptanceWindow(channels: readonly Channel[], options: WindowOptions = {}): FoundWindow {
  const of = (meaning: ChannelMeaning) =>
    channels.find((channel) => channel.meaning === meaning)?.values ?? null;
  const speed = of('engineSpeed');
  if (speed === null || speed.filter((value) => value > 0).length < 2)
    return { window: null, remarks: [noRows(speed === null ? 0 : speed.length)] };
  const time = usableTime(of('time') ?? undefined);
  const throttle = of('throttle');
  const torque = of('torque') ?? of('power');
  if (kindOfRows(speed, time) === 'points')
    return pointsWindow(speed, torque, throttle, options.windowRpm ?? null);
  const trace: SweepTrace = {
    // Single odd readings of the pick-up must neither end the pull nor stretch its window.
    speedRpm: runningMedian(
      speed.map((value) => (value > 0 ? value : Number.NaN)),
      2,
    ),
    clock: time ?? speed.map((_, row) => row),
    clockIsTime: time !== null,
    torque,
  };
  const holds = time === null ? null : findStaircase(trace.speedRpm, time, torque);
  if (holds !== null) return staircaseWindow(holds, speed.length, options.windowRpm ?? null);
  const stretches = openThrottleStretches(throttle, speed.length);
  const sweep = findSweep(trace, stretches);
  if (sweep === null)
    return options.windowRpm
      ? rowsInHandSet(trace, pointsWindow(speed, torque, throttle, options.windowRpm))
      : allRows(trace);
  const cuts = new CutList(speed.length, trace, throttle, stretches, sweep);
  const remarks: Remark[] = [];
  if (sweep.direction === 'falling') remarks.push(fallingSweep(trace, sweep));
  const rows = options.windowRpm ? handSet(trace, sweep, options.windowRpm) : settledRows(trace, sweep, cuts);
  if (rows === null) {
    return { window: null, remarks: [outsideHandSet(trace, sweep, options.windowRpm!)] };
  }
  const rates = sweepRates(trace, rows);
  remarks.push(...unevenSweep(trace, rows, rates));
  return {
    window: {
      fromRow: rows.fromRow,
      toRow: rows.toRow,
      direction: sweep.direction,
      windowRpm: extentOf(trace.speedRpm.subarray(rows.fromRow, rows.toRow + 1)),
      sweepRateRpmPerS: time === null ? null : median(rates),
      cuts: cuts.around(rows, options.windowRpm ?? null),
    },
    remarks,
  };
}

function settledRows(trace: SweepTrace, sweep: SweepRun, cuts: CutList): RowRun {
  const { torque, speedRpm } = trace;
  if (torque === null) return sweep;
  const start = settledStart(sweep, speedRpm, torque);
  const end = loadedEnd(sweep, speedRpm, torque);
  if (start !== null)
    cuts.startReason = said`torque not yet settled: off its trend by up to ${offTrend(start)} until ${speedFigure(speedRpm[start.row]!)}`;
  if (end !== null)
    cuts.endReason = said`torque fell away: ${offTrend(end)} under its trend after ${speedFigure(speedRpm[end.row]!)}, and did not come back`;
  return { fromRow: start?.row ?? sweep.fromRow, toRow: end?.row ?? sweep.toRow };
}

const offTrend = (found: { torque: number; trend: number }) =>
  percentFigure(Math.abs(found.torque / found.trend - 1));

/** Rows of the sweep, carried on outward while the speed keeps its direction, that lie in a hand-set window. */
function handSet(trace: SweepTrace, sweep: SweepRun, [low, high]: [number, number]): RowRun | null {
  const sign = sweep.direction === 'rising' ? 1 : -1;
  const { speedRpm } = trace;
  let { fromRow, toRow } = sweep;
  while (fromRow > 0 && sign * (speedRpm[fromRow]! - speedRpm[fromRow - 1]!) > 0) fromRow -= 1;
  while (toRow + 1 < speedRpm.length && sign * (speedRpm[toRow + 1]! - speedRpm[toRow]!) > 0) toRow += 1;
  const inside = (row: number) => speedRpm[row]! >= low && speedRpm[row]! <= high;
  while (fromRow <= toRow && !inside(fromRow)) fromRow += 1;
  while (toRow >= fromRow && !inside(toRow)) toRow -= 1;
  return toRow > fromRow ? { fromRow, toRow } : null;
}

/** Without a sweep to follow, a hand-set window holds every row whose speed lies in it. */
function rowsInHandSet(trace: SweepTrace, found: FoundWindow): FoundWindow {
  if (found.window === null) return found;
  return {
    window: found.window,
    remarks: [noSteadySweep(trace, 'Every row inside the window set by hand is used.')],
  };
}

function allRows(trace: SweepTrace): FoundWindow {
  const [low, high] = extentOf(trace.speedRpm);
  const last = trace.speedRpm.length - 1;
  return {
    window: {
      fromRow: 0,
      toRow: last,
      direction: trace.speedRpm[last]! < trace.speedRpm[0]! ? 'falling' : 'rising',
      windowRpm: [low, high],
      sweepRateRpmPerS: null,
      cuts: [],
    },
    remarks: [
      noSteadySweep(trace, 'All rows are used. Set the window by hand if only part of them is the pull.'),
    ],
  };
}

function noSteadySweep(trace: SweepTrace, whatIsUsed: string): Remark {
  const [low, high] = extentOf(trace.speedRpm);
  return remark(
    'caution',
    'no-steady-sweep',
    said`No stretch of at least 200 rpm was found in which the speed moves steadily in one direction (it lies between ${speedFigure(low)} and ${speedFigure(high)}). ${whatIsUsed}`,
  );
}

const noRows = (rowCount: number) =>
  remark(
    'refusal',
    'too-few-rows',
    `Engine speed has fewer than two rows above zero (${rowCount} rows read). A curve needs at least two. Check the column chosen as engine speed.`,
  );

const fallingSweep = (trace: SweepTrace, sweep: SweepRun) =>
  remark(
    'caution',
    'falling-sweep',
    said`The brake pulled the engine down, from ${speedFigure(trace.speedRpm[sweep.fromRow]!)} to ${speedFigure(trace.speedRpm[sweep.toRow]!)}. Such a pull reads high, as the turning parts give torque back. Compare it only with falling pulls.`,
  );

const outsideHandSet = (trace: SweepTrace, sweep: SweepRun, [low, high]: [number, number]) =>
  remark(
    'refusal',
    'window-misses-the-pull',
    said`The window set by hand, ${speedRange(low, high)}, holds fewer than two rows of the pull, which runs from ${speedFigure(trace.speedRpm[sweep.fromRow]!)} to ${speedFigure(trace.speedRpm[sweep.toRow]!)}. Widen it.`,
  );
