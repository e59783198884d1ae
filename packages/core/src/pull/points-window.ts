import { extentOf } from '../numeric/extent.ts';
import { runsOf } from '../numeric/runs.ts';
import { speedRange } from '../quantity/index.ts';
import { remark, type Said, said } from '../remark/index.ts';
import type { FoundWindow } from './acceptance-window.ts';
import type { Cut } from './model.ts';
import { openThrottleStretches } from './open-throttle.ts';
import { cutOf } from './wording.ts';

/**
 * Accepted rows of settled points: every row with a speed and a torque that lies in the hand-set window, in whatever
 * order the rows come; rows that do not count lie in `cuts`, also between the first and the last accepted one.
 */
export function pointsWindow(
  speedRpm: Float64Array,
  torque: Float64Array | null,
  throttle: Float64Array | null,
  windowRpm: [low: number, high: number] | null,
): FoundWindow {
  const outside =
    windowRpm === null
      ? null
      : said`outside the window set by hand, ${speedRange(windowRpm[0], windowRpm[1])}`;
  const open = new Array<boolean>(speedRpm.length).fill(false);
  for (const run of openThrottleStretches(throttle, speedRpm.length))
    open.fill(true, run.fromRow, run.toRow + 1);
  const why = Array.from(speedRpm, (speed, row): Said | string | null => {
    if (!(speed > 0)) return 'no engine speed';
    if (torque !== null && !Number.isFinite(torque[row]!)) return 'no torque';
    if (!open[row]) return 'throttle not fully open';
    if (windowRpm !== null && !(speed >= windowRpm[0] && speed <= windowRpm[1])) return outside;
    return null;
  });
  const counted = why.map((reason) => reason === null);
  const speeds = speedRpm.filter((_, row) => counted[row]!);
  if (speeds.length === 0)
    return {
      window: null,
      remarks: [
        remark(
          'refusal',
          'no-row-counts',
          said`None of the ${speedRpm.length} rows counts (first: ${why[0] ?? 'no rows'}). Check the columns, or widen the window.`,
        ),
      ],
    };
  const cuts: Cut[] = [...new Set(why)].flatMap((reason) =>
    reason === null
      ? []
      : runsOf(why.map((other) => other === reason)).map((run) => cutOf(run.fromRow, run.toRow, reason)),
  );
  const fromRow = counted.indexOf(true);
  const toRow = counted.lastIndexOf(true);
  return {
    window: {
      fromRow,
      toRow,
      direction: speedRpm[toRow]! < speedRpm[fromRow]! ? 'falling' : 'rising',
      windowRpm: extentOf(speeds),
      sweepRateRpmPerS: null,
      cuts: cuts.sort((a, b) => a.fromRow - b.fromRow),
    },
    remarks: [],
  };
}
