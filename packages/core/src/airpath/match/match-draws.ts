import { MATCH_FIGURES, type MatchCase } from '../model.ts';
import { writeFigures } from './match-figures.ts';
import { nodeSolver } from './match-node.ts';
import { planMatch } from './match-plan.ts';
import { variationSource } from './match-variation.ts';

/** Draws of a case: the value of draw `d` of figure `f` at node `n` stands at `(f × nodes + n) × draws + d`. */
export interface CaseDraws {
  engineSpeedRpm: number[];
  values: Float32Array;
}

/** A run of draws, from one place on. Plain data: it goes between threads. */
export interface MatchDraws {
  from: number;
  draws: number;
  seed: number;
  cases: CaseDraws[];
}

/** Relative, of the flow: far below any band, and two looks fewer. */
const TOLERANCE = 1e-7;

/**
 * Matches with their uncertain parts drawn: draw `from`, `from` + 1 and so on of one endless row that the seed names. Slices made
 * apart and put together by `bandsOfDraws` give what one run gives, number by number.
 *
 * @example matchDraws([before, after], { draws: 500, seed: 7, from: 500 }) // the second 500
 */
export function matchDraws(
  cases: readonly MatchCase[],
  { draws, seed, from = 0 }: { draws: number; seed: number; from?: number },
): MatchDraws {
  return { from, draws, seed, cases: cases.map((one) => drawsOfCase(one, { draws, seed, from })) };
}

function drawsOfCase(
  { input, spread }: MatchCase,
  { draws, seed, from }: { draws: number; seed: number; from: number },
): CaseDraws {
  const plan = planMatch(input);
  const { nodes, row } = plan;
  const { solve } = nodeSolver(plan, TOLERANCE);
  // As given first: its answers are the guesses for all others.
  for (let node = 0; node < nodes; node++) solve(node);
  const figures = MATCH_FIGURES.length;
  const values = new Float32Array(figures * nodes * draws);
  const vary = variationSource(spread, seed);
  for (let draw = 0; draw < draws; draw++) {
    plan.vary = vary.draw(from + draw);
    for (let node = 0; node < nodes; node++) {
      vary.at(node);
      writeFigures(plan, solve(node));
      for (let figure = 0; figure < figures; figure++) {
        values[(figure * nodes + node) * draws + draw] = row[figure]!;
      }
    }
  }
  return { engineSpeedRpm: input.baseline.engineSpeedRpm, values };
}
