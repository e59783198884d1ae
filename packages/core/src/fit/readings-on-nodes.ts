import type { MatchCurve } from '../airpath/index.ts';
import { interpolateLinear } from '../numeric/index.ts';
import type { FittedChannel } from './fitted-channels.ts';
import { errorAt, SHARED_OVER_RPM } from './fitted-channels.ts';
import type { FitTarget } from './model.ts';

/** Readings of one channel over all pulls that enter the fit, in the order of the pulls. */
export interface ChannelReadings {
  channel: FittedChannel;
  readings: { target: number; speedRpm: number; value: number }[];
}

/** Speeds of one pull and channel that enter: more would add nothing, for neighbours share their error. */
const MOST_SPEEDS = 18;

/**
 * The readings of a channel that a fit can use: finite, within the matched speeds, and where the match has a figure before anything is fitted.
 */
export function readingsOf(
  channel: FittedChannel,
  targets: readonly FitTarget[],
  curves: readonly MatchCurve[],
): ChannelReadings {
  const readings = targets.flatMap(({ pull }, target) => {
    const values = pull[channel.channel];
    if (values === null) return [];
    const usable = pull.engineSpeedRpm.flatMap((speedRpm, node) => {
      const value = values[node]!;
      const matched = figureAt(curves[target]!, channel, speedRpm);
      return Number.isFinite(value) && Number.isFinite(matched) ? [{ target, speedRpm, value }] : [];
    });
    return thinned(usable);
  });
  return { channel, readings };
}

/** The figure of a match at an engine speed, on the straight line between its nodes. */
export const figureAt = (
  curve: MatchCurve,
  { figure }: Pick<FittedChannel, 'figure'>,
  speedRpm: number,
): number => interpolateLinear(curve.engineSpeedRpm, curve.figures[figure], speedRpm);

/** Covariance of the readings' errors; see `FittedChannel` for its parts. */
export function covarianceOf({ channel, readings }: ChannelReadings): number[][] {
  return readings.map((one, line) =>
    readings.map((other, column) => {
      const both = (part: 'common' | 'shape' | 'pull' | 'node') =>
        errorAt(channel[part], one.value) * errorAt(channel[part], other.value);
      const apart = Math.abs(one.speedRpm - other.speedRpm);
      let sum = both('common') + both('shape') * Math.exp(-apart / SHARED_OVER_RPM);
      if (one.target === other.target) sum += both('pull');
      if (line === column) sum += both('node');
      return sum;
    }),
  );
}

function thinned<T>(rows: readonly T[]): T[] {
  if (rows.length <= MOST_SPEEDS) return [...rows];
  const step = (rows.length - 1) / (MOST_SPEEDS - 1);
  return Array.from({ length: MOST_SPEEDS }, (_, place) => rows[Math.round(place * step)]!);
}
