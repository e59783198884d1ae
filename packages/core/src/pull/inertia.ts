import { localSlope } from '../numeric/local-slope.ts';
import { median, runningMedian } from '../numeric/median.ts';
import { figureOf, inertiaTorque } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import type { AcceptanceWindow, SweepSettings } from './model.ts';

/** Rows to either side for the slope of speed: half a second in all, so that the pick-up's jitter does not become torque. */
const SLOPE_HALF_WINDOW_S = 0.25;

/**
 * Torque a sweep hides, to be added row by row, N·m: T = I · 2π/60 · dn/dt. `null`: nothing is to be added.
 * The remark says which figure is shown, whenever inertia could matter and something is known of it.
 */
export function torqueHiddenByInertia(
  sweep: SweepSettings,
  asked: boolean,
  speedRpm: Float64Array,
  time: Float64Array | null,
  window: AcceptanceWindow,
): { torque: Float64Array | null; remarks: Remark[] } {
  const rate = window.sweepRateRpmPerS;
  if (sweep.inertiaCompensated === 'yes')
    return {
      torque: null,
      remarks: [
        remark(
          'note',
          'inertia-in-file',
          'Torque already has the inertia of the sweep added back, as the file has it.',
        ),
      ],
    };
  if (sweep.momentOfInertia === null || time === null || rate === null) {
    if (!asked) return { torque: null, remarks: [] };
    const missing =
      sweep.momentOfInertia === null
        ? 'the moment of inertia is not known'
        : time === null
          ? 'there is no time channel'
          : 'the speed was held in steps, where inertia hides nothing';
    return {
      torque: null,
      remarks: [
        remark(
          'caution',
          'inertia-not-added',
          `The inertia of the sweep was asked for but is not added: ${missing}. Torque is as recorded.`,
        ),
      ],
    };
  }
  const torque = figureOf(inertiaTorque(sweep.momentOfInertia, rate), 'torque');
  const about = said`about ${torque} at ${figureOf(rate, 'sweepRate')} and ${inertiaFigure(sweep.momentOfInertia)}`;
  if (!asked)
    return {
      torque: null,
      remarks: [
        remark('note', 'inertia-left-out', said`Torque is as the brake read it: the sweep hides ${about}.`),
      ],
    };
  if (sweep.inertiaCompensated === 'unknown')
    return {
      torque: null,
      remarks: [
        remark(
          'caution',
          'inertia-not-added',
          said`The inertia of the sweep (${about}) was asked for but is not added: whether the file already has it is not known. Say yes or no in the pull's sweep settings.`,
        ),
      ],
    };
  const step = median(time.subarray(1).map((value, row) => value - time[row]!));
  const slope = localSlope(
    time,
    runningMedian(speedRpm, 2),
    Math.max(2, Math.round(SLOPE_HALF_WINDOW_S / step)),
  );
  return {
    torque: slope.map((value) => inertiaTorque(sweep.momentOfInertia!, value)),
    remarks: [
      remark('note', 'inertia-added', said`The torque hidden by the sweep's inertia is added: ${about}.`),
    ],
  };
}

/** As it was entered: nobody knows one to more digits. */
const inertiaFigure = (inertia: number) =>
  figureOf(inertia, 'momentOfInertia', { plain: `${inertia} kg·m²` });
