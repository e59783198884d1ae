import { interpolateLinear } from '../numeric/interpolate.ts';
import type { ChannelMeaning, GriddedCurve } from './model.ts';

/** Settled rows further apart than this are not joined: step tests are run in steps of 250 or 500 r/min (common practice). */
export const WIDEST_JOINED_STEP_RPM = 500;

/**
 * A channel of settled points at any engine speed, on the straight line between rows with a figure at most 500 r/min apart;
 * NaN elsewhere.
 */
export function pointsAt(
  curve: GriddedCurve,
  meaning: ChannelMeaning,
  speedsRpm: ArrayLike<number>,
): Float64Array {
  const values = curve.channels.get(meaning);
  if (values === undefined) return new Float64Array(speedsRpm.length).fill(Number.NaN);
  const x = curve.engineSpeedRpm.filter((_, row) => Number.isFinite(values[row]!));
  const y = values.filter(Number.isFinite);
  return Float64Array.from(speedsRpm, (speed) => interpolateLinear(x, y, speed, WIDEST_JOINED_STEP_RPM));
}
