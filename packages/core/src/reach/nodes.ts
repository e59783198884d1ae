import type { Baseline } from '../airpath/index.ts';
import { firstNotBelow } from '../numeric/index.ts';
import type { ReachTarget } from './model.ts';

/**
 * Places of some nodes of a baseline that tell what all tell of a target: the ends, the highest power and air flow, the speeds asked of, and
 * others evenly between. All of them where there are no more than `most`.
 */
export function nodesFor(
  { engineSpeedRpm, brakePower, airFlow }: Baseline,
  target: ReachTarget,
  most: number,
): number[] {
  const count = engineSpeedRpm.length;
  if (count <= most) return engineSpeedRpm.map((_, node) => node);
  const asked = [target.atRpm, ...(target.windowRpm ?? [])].flatMap((rpm) =>
    rpm === null ? [] : besides(engineSpeedRpm, rpm),
  );
  const wanted = new Set([0, count - 1, highest(brakePower), highest(airFlow), ...asked]);
  const even = Math.max(2, most - wanted.size);
  for (let step = 0; step < even; step++) wanted.add(Math.round(((count - 1) * step) / (even - 1)));
  return [...wanted].sort((a, b) => a - b);
}

/** Nodes on either side of a speed. */
function besides(speeds: readonly number[], rpm: number): number[] {
  const upper = firstNotBelow(speeds, rpm);
  return [upper - 1, upper].filter((node) => node >= 0 && node < speeds.length);
}

const highest = (values: readonly number[]): number =>
  values.reduce((best, value, node) => (value > values[best]! ? node : best), 0);
