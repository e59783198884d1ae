import type { Baseline, MatchCase, MatchInput } from '../model.ts';

/**
 * A match at some of its baseline's nodes: quicker to solve, and at these nodes the same to the last bit as long as the node of the highest air
 * flow is among them, by which the exhaust's pressure goes.
 *
 * @param nodes rising
 * @example caseAtNodes(match, [0, 20, 40]).input.baseline.engineSpeedRpm.length // 3
 */
export function caseAtNodes({ input, spread }: MatchCase, nodes: readonly number[]): MatchCase {
  return {
    input: inputAtNodes(input, nodes),
    spread: spread.map((group) =>
      group.shapes === undefined
        ? group
        : { ...group, shapes: group.shapes.map((shape) => picked(shape, nodes)) },
    ),
  };
}

export function inputAtNodes(input: MatchInput, nodes: readonly number[]): MatchInput {
  const { baseline, compressor, swallowing, work } = input;
  return {
    ...input,
    baseline: baselineAtNodes(baseline, nodes),
    compressor: {
      ...compressor,
      ...(compressor.headShape === undefined ? {} : { headShape: picked(compressor.headShape, nodes) }),
    },
    swallowing: { ...swallowing, breathing: picked(swallowing.breathing, nodes) },
    work: {
      ...work,
      ...(work.shape === undefined ? {} : { shape: picked(work.shape, nodes) }),
      ...(work.fuelFactor === undefined ? {} : { fuelFactor: picked(work.fuelFactor, nodes) }),
    },
  };
}

export function baselineAtNodes(baseline: Baseline, nodes: readonly number[]): Baseline {
  const of = (values: readonly number[]): number[] => nodes.map((node) => values[node]!);
  return {
    ...baseline,
    engineSpeedRpm: of(baseline.engineSpeedRpm),
    brakePower: of(baseline.brakePower),
    airFlow: of(baseline.airFlow),
    frictionPower: of(baseline.frictionPower),
    manifoldPressure: of(baseline.manifoldPressure),
    manifoldTemperature: of(baseline.manifoldTemperature),
    lambda: picked(baseline.lambda, nodes),
  };
}

const picked = (values: readonly number[] | null, nodes: readonly number[]): number[] | null =>
  values === null ? null : nodes.map((node) => values[node]!);
