/**
 * A speed line drawn through many points. Held against a measured point by the shortest distance, so that where a line stands nearly vertical it is
 * judged by its flow and not by a pressure ratio that jumps.
 */
export interface LineTrace {
  flow: number[];
  pressureRatio: number[];
  efficiency: number[];
}

/**
 * Shortest way from a point to a trace, in shares of the point's own flow and pressure ratio, and the trace's efficiency there.
 *
 * @example distanceTo({ flow: [1, 3], pressureRatio: [2, 2], efficiency: [0.7, 0.8] }, { flow: 2, pressureRatio: 2.02 }) // { distance: 0.0099, efficiency: 0.75 }
 */
export function distanceTo(
  trace: LineTrace,
  point: { flow: number; pressureRatio: number },
): { distance: number; efficiency: number } {
  let least = Number.POSITIVE_INFINITY;
  let efficiency = Number.NaN;
  const x = (place: number): number => trace.flow[place]! / point.flow - 1;
  const y = (place: number): number => trace.pressureRatio[place]! / point.pressureRatio - 1;
  for (let place = 1; place < trace.flow.length; place++) {
    const fromX = x(place - 1);
    const fromY = y(place - 1);
    const alongX = x(place) - fromX;
    const alongY = y(place) - fromY;
    const square = alongX * alongX + alongY * alongY;
    const part = square > 0 ? Math.max(0, Math.min(1, -(fromX * alongX + fromY * alongY) / square)) : 0;
    const distance = Math.hypot(fromX + part * alongX, fromY + part * alongY);
    if (distance < least) {
      least = distance;
      efficiency =
        trace.efficiency[place - 1]! + part * (trace.efficiency[place]! - trace.efficiency[place - 1]!);
    }
  }
  return { distance: least, efficiency };
}
