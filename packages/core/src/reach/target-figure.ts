import type { ReachTarget } from './model.ts';

/** What of a power curve a target asks for. */
export interface TargetFigure {
  /** In the unit of the power given; NaN where the curve has none at a speed it needs. */
  of: (power: ArrayLike<number>) => number;
  /** Node of the highest power; -1 of a curve without any. */
  peakOf: (power: ArrayLike<number>) => number;
}

/**
 * Reads the figure of a target off power at engine speeds: the highest node, the straight line between two nodes, or the mean over a window
 * with straight lines between the nodes. The latter two are weights on the nodes, so that they are quick over thousands of draws.
 *
 * @example targetFigure({ what: 'average power', windowRpm: [3000, 6000], … }, [3000, 6000]).of([100, 200]) // 150
 */
export function targetFigure(
  { what, atRpm, windowRpm }: Pick<ReachTarget, 'what' | 'atRpm' | 'windowRpm'>,
  engineSpeedRpm: readonly number[],
): TargetFigure {
  const peakOf = (power: ArrayLike<number>): number => {
    let best = -1;
    for (let node = 0; node < engineSpeedRpm.length; node++) {
      if (!Number.isFinite(power[node])) continue;
      if (best < 0 || power[node]! > power[best]!) best = node;
    }
    return best;
  };
  if (what === 'peak power') {
    const of = (power: ArrayLike<number>) => {
      const node = peakOf(power);
      return node < 0 ? Number.NaN : power[node]!;
    };
    return { of, peakOf };
  }
  const weights =
    what === 'power at a speed' ? weightsAt(engineSpeedRpm, atRpm) : weightsOver(engineSpeedRpm, windowRpm);
  const of = (power: ArrayLike<number>) => {
    if (weights === null) return Number.NaN;
    let sum = 0;
    for (const [node, weight] of weights) sum += weight * power[node]!;
    return sum;
  };
  return { of, peakOf };
}

type Weights = [node: number, weight: number][];

/** `null`: the speed lies outside the nodes. */
function weightsAt(speeds: readonly number[], rpm: number | null): Weights | null {
  if (rpm === null) return null;
  for (let node = 0; node < speeds.length; node++) {
    if (speeds[node] === rpm) return [[node, 1]];
    const next = speeds[node + 1];
    if (next === undefined || !(speeds[node]! < rpm && rpm < next)) continue;
    const share = (rpm - speeds[node]!) / (next - speeds[node]!);
    return [
      [node, 1 - share],
      [node + 1, share],
    ];
  }
  return null;
}

/** Of the mean over a window, trapezoids between the nodes; `null`: the window is not within them. */
function weightsOver(speeds: readonly number[], window: ReachTarget['windowRpm']): Weights | null {
  if (window === null) return null;
  const [low, high] = window;
  const at = [low, ...speeds.filter((speed) => speed > low && speed < high), high];
  const weights = new Array<number>(speeds.length).fill(0);
  for (const [place, speed] of at.entries()) {
    const line = weightsAt(speeds, speed);
    if (line === null) return null;
    const before = place > 0 ? speed - at[place - 1]! : 0;
    const behind = place < at.length - 1 ? at[place + 1]! - speed : 0;
    const share = (before + behind) / 2 / (high - low);
    for (const [node, weight] of line) weights[node]! += share * weight;
  }
  return weights.flatMap((weight, node): Weights => (weight === 0 ? [] : [[node, weight]]));
}
