import { MATCH_FIGURES, type MatchCurve, type MatchInput, type MatchState } from '../model.ts';
import { AT, writeFigures } from './match-figures.ts';
import { nodeSolver } from './match-node.ts';
import { planMatch } from './match-plan.ts';

/** Relative, of the flow: far below what any balance is asked to. */
const TOLERANCE = 1e-13;

/**
 * The match of engine and compressor at each node of the baseline: the state in which the air that comes through filter, compressor,
 * bypass, cooler and throttle is the air that the engine swallows from that manifold. All figures inside units, NaN where there is
 * no solution (`state` says so). Steady flow, constant gas properties, no pulsation; outside the measured map the state says so too.
 *
 * The compressor breathes air of the ambient temperature; a leak goes to the open, so it costs its drive power and heats nothing.
 *
 * @example solveMatch(input).figures.boost[0] // Pa, gauge, at the first engine speed
 */
export function solveMatch(input: MatchInput): MatchCurve {
  const plan = planMatch(input);
  const solver = nodeSolver(plan, TOLERANCE);
  const figures = Object.fromEntries(
    MATCH_FIGURES.map((figure) => [figure, new Float64Array(plan.nodes)]),
  ) as MatchCurve['figures'];
  const state: MatchState[] = [];
  for (let node = 0; node < plan.nodes; node++) {
    const place = solver.solve(node);
    writeFigures(plan, place);
    for (const figure of MATCH_FIGURES) figures[figure][node] = plan.row[AT[figure]]!;
    state.push(place);
  }
  return { engineSpeedRpm: input.baseline.engineSpeedRpm, figures, state };
}
