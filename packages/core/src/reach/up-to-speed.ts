import { inputAtNodes, MATCH_FIGURES, type MatchCurve, type MatchInput } from '../airpath/index.ts';

/** How many of rising engine speeds lie at or below one. */
export const countUpTo = (speeds: readonly number[], rpm: number): number =>
  speeds.filter((speed) => speed <= rpm).length;

/** The first nodes of a curve: of an engine that is stopped there. */
export function firstOfCurve(curve: MatchCurve, count: number): MatchCurve {
  if (count === curve.engineSpeedRpm.length) return curve;
  return {
    engineSpeedRpm: curve.engineSpeedRpm.slice(0, count),
    figures: Object.fromEntries(
      MATCH_FIGURES.map((figure) => [figure, curve.figures[figure].subarray(0, count)]),
    ) as MatchCurve['figures'],
    state: curve.state.slice(0, count),
  };
}

/** A match at its first nodes, to stand beside its cut curve; it is not solved so, for what is assumed of it goes by its highest air flow. */
export const firstOfInput = (input: MatchInput, count: number): MatchInput =>
  count === input.baseline.engineSpeedRpm.length
    ? input
    : inputAtNodes(
        input,
        Array.from({ length: count }, (_, node) => node),
      );
