import type { MatchInput } from '@pullbook/core/airpath';
import { interpolateLinear } from '@pullbook/core/numeric';
import type { WrittenOverSpeed } from '@pullbook/formats';

/** A match with factors that a file states over engine speed, on top of what is there. `null`: as it is. */
export function withOverSpeed(input: MatchInput, said: WrittenOverSpeed | null): MatchInput {
  if (said === null) return input;
  const { compressor, swallowing, work } = input;
  const times = (before: number[] | null | undefined, factor: number[] | null) =>
    factor === null
      ? (before ?? null)
      : input.baseline.engineSpeedRpm.map(
          (speed, node) => (before?.[node] ?? 1) * held(said.engineSpeedRpm, factor, speed),
        );
  return {
    ...input,
    compressor: { ...compressor, headShape: times(compressor.headShape, said.head) },
    swallowing: { ...swallowing, breathing: times(swallowing.breathing, said.air) },
    work: { ...work, shape: times(work.shape, said.work), fuelFactor: times(work.fuelFactor, said.fuel) },
  };
}

/** Between its speeds straight, beyond them as at the end. */
function held(speeds: readonly number[], values: readonly number[], speed: number): number {
  if (speed <= speeds[0]!) return values[0]!;
  return speed >= speeds.at(-1)! ? values.at(-1)! : interpolateLinear(speeds, values, speed);
}
