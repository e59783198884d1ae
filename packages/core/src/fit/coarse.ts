import type { FitTarget } from './model.ts';

/** Nodes of a baseline that are solved while it is fitted: curves are straight enough between them, and readings no closer. */
const MOST_NODES = 24;

/** A target whose match has fewer nodes. */
export function coarse({ input, ...target }: FitTarget): FitTarget {
  const { baseline, compressor, swallowing, work } = input;
  const last = baseline.engineSpeedRpm.length - 1;
  if (last < MOST_NODES) return { input, ...target };
  const nodes = Array.from({ length: MOST_NODES }, (_, place) =>
    Math.round((place * last) / (MOST_NODES - 1)),
  );
  const pick = (values: readonly number[]) => nodes.map((node) => values[node]!);
  const maybe = (values: readonly number[] | null | undefined) => (values == null ? null : pick(values));
  return {
    ...target,
    input: {
      ...input,
      baseline: {
        ...baseline,
        engineSpeedRpm: pick(baseline.engineSpeedRpm),
        brakePower: pick(baseline.brakePower),
        airFlow: pick(baseline.airFlow),
        frictionPower: pick(baseline.frictionPower),
        manifoldPressure: pick(baseline.manifoldPressure),
        manifoldTemperature: pick(baseline.manifoldTemperature),
        lambda: maybe(baseline.lambda),
      },
      compressor: { ...compressor, headShape: maybe(compressor.headShape) },
      swallowing: { ...swallowing, breathing: maybe(swallowing.breathing) },
      work: { ...work, shape: maybe(work.shape) },
    },
  };
}
