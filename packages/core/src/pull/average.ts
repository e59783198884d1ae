import { mean } from '../numeric/mean.ts';
import { pointsAt } from './between-rows.ts';
import type { ChannelMeaning, GriddedCurve } from './model.ts';

/**
 * Average of a channel over an engine-speed window, each speed counting alike: the mean of the bins in it, or for settled
 * points the integral of the straight lines between them over the window. Inside unit of the channel. Empty bins and gaps
 * between rows that are not joined are left out. `null` where the curve does not reach both ends of the window.
 */
export function averageOver(
  curve: GriddedCurve,
  meaning: ChannelMeaning,
  [low, high]: readonly [low: number, high: number],
): number | null {
  const values = curve.channels.get(meaning);
  if (values === undefined || !(high >= low)) return null;
  const reached = curve.engineSpeedRpm.filter((_, node) => Number.isFinite(values[node]!));
  const slack = curve.kindOfRows === 'samples' ? curve.binWidthRpm / 2 : 0;
  if (reached.length === 0 || reached[0]! > low + slack || reached.at(-1)! < high - slack) return null;
  const average =
    curve.kindOfRows === 'samples'
      ? mean(
          values.filter(
            (_, node) => curve.engineSpeedRpm[node]! >= low && curve.engineSpeedRpm[node]! <= high,
          ),
        )
      : lineAverage(curve, meaning, low, high);
  return Number.isFinite(average) ? average : null;
}

function lineAverage(curve: GriddedCurve, meaning: ChannelMeaning, low: number, high: number): number {
  const inner = Array.from(curve.engineSpeedRpm).filter((speed) => speed > low && speed < high);
  const speeds = [low, ...inner, high];
  const values = pointsAt(curve, meaning, speeds);
  const middles = pointsAt(
    curve,
    meaning,
    speeds.slice(1).map((speed, step) => (speed + speeds[step]!) / 2),
  );
  let area = 0;
  let width = 0;
  for (let step = 1; step < speeds.length; step++) {
    const trapezium = (values[step - 1]! + values[step]!) / 2;
    // The middle of a gap that is not joined has no figure although both its ends have.
    if (!Number.isFinite(trapezium) || !Number.isFinite(middles[step - 1]!)) continue;
    area += trapezium * (speeds[step]! - speeds[step - 1]!);
    width += speeds[step]! - speeds[step - 1]!;
  }
  return width > 0 ? area / width : low === high ? values[0]! : Number.NaN;
}
