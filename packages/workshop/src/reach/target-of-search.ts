import { type Baseline, solveMatch } from '@pullbook/core/airpath';
import type { ReachBuild, ReachTarget } from '@pullbook/core/reach';

/** A ladder has so many rungs. */
export const MOST_RUNGS = 12;

/** Above what is there now, where no target was given: only what is left in the supercharger is then asked. */
const MORE = 1.05;

/** A target that stands a little above what the engine makes as it is, W in the standard. */
export function aLittleMore(
  { match }: ReachBuild,
  baseline: Baseline,
  {
    factor,
    boostCap,
    measured = [],
  }: { factor: number; boostCap: number | null; measured?: readonly number[] | undefined },
): ReachTarget {
  const matched = match === null ? baseline.brakePower : [...solveMatch(match.input).figures.brakePower];
  const now = Math.max(...measured, ...matched.filter(Number.isFinite).map((power) => power * factor));
  return { what: 'peak power', power: MORE * now, atRpm: null, windowRpm: null, boostCap };
}
