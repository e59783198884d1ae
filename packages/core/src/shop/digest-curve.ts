import { type GriddedCurve, pointsAt } from '../pull/index.ts';
import type { PullDigest } from './model.ts';

/** Spacing of a digest, r/min. */
export const DIGEST_STEP_RPM = 250;

/** Where each figure is read and averaged, so that one noisy bin does not stand for a quarter thousand r/min. */
const ROUND_RPM = [-100, -50, 0, 50, 100];

/** A millionth of power: far below any scatter, and short in JSON. */
const kept = (value: number): number | null =>
  Number.isFinite(value) ? Math.round(value * 1e6) / 1e6 : null;

/**
 * The few numbers of a curve that the shop's figures need: the logarithm of power at whole 250 r/min, each the mean over
 * 200 r/min round it. Without a figure where the curve does not reach so far.
 *
 * @example digestOfCurve(view.curve) // { fromRpm: 3000, stepRpm: 250, logPower: [11.8, 11.9, …] }
 */
export function digestOfCurve(curve: GriddedCurve): Pick<PullDigest, 'fromRpm' | 'stepRpm' | 'logPower'> {
  const speeds = curve.engineSpeedRpm;
  const first = Math.ceil((speeds[0] ?? 0) / DIGEST_STEP_RPM);
  const last = Math.floor((speeds[speeds.length - 1] ?? 0) / DIGEST_STEP_RPM);
  const nodes = Array.from(
    { length: Math.max(0, last - first + 1) },
    (_, node) => (first + node) * DIGEST_STEP_RPM,
  );
  const read = pointsAt(
    curve,
    'power',
    nodes.flatMap((node) => ROUND_RPM.map((beside) => node + beside)),
  );
  const logPower = nodes.map((_, node) => {
    const values = read.subarray(node * ROUND_RPM.length, (node + 1) * ROUND_RPM.length);
    return kept(
      values.reduce((sum, power) => sum + (power > 0 ? Math.log(power) : Number.NaN), 0) / ROUND_RPM.length,
    );
  });
  return { fromRpm: first * DIGEST_STEP_RPM, stepRpm: DIGEST_STEP_RPM, logPower };
}
