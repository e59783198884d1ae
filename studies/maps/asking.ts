import { efficiencyOn, type FittedMap, pressureRatioOn, speedLineAt } from '@pullbook/core/airpath';
import { timed } from './judge.ts';

const COUNT = 100_000;

/** Microseconds for making one speed line ready, and for asking it for pressure ratio and efficiency together. */
export function askingTimes(map: FittedMap): { line: number; point: number } {
  const [low, high] = map.measuredSpeedRpm!;
  const middle = speedLineAt(map, (low + high) / 2);
  const from = middle.surgeFlow;
  const span = middle.chokeFlow - from;
  const lines = timed(() => {
    let sum = 0;
    for (let at = 0; at < COUNT; at++) sum += speedLineAt(map, low + ((high - low) * at) / COUNT).chokeFlow;
    return sum;
  });
  const points = timed(() => {
    let sum = 0;
    for (let at = 0; at < COUNT; at++) {
      const flow = from + (span * at) / COUNT;
      sum += pressureRatioOn(middle, flow) + efficiencyOn(middle, flow);
    }
    return sum;
  });
  return { line: (1000 * lines.time) / COUNT, point: (1000 * points.time) / COUNT };
}
