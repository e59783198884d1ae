import type { MatchCase, MatchInput, SpreadGroup } from '../airpath/index.ts';
import { mean } from '../numeric/index.ts';
import type { MatchFit } from './model.ts';
import { overallRatioOf } from './moves.ts';

/** Head and work that stay open for each share by which the impeller turns faster than it was fitted at (common practice, no source). */
const OPEN_BY_SPEED = { head: 0.12, work: 0.14 };

/** A pulley far from the fitted one is no reason to believe in half an engine. */
const LEAST_WORK = 0.5;

/** Relative: as pulleys are written on two sheets. */
export const SAME_RATIO = 1e-6;

/**
 * A fitted case with another drive tried on it: what of the work was lost under boost goes with boost, and head and work are opened by how much
 * faster or slower the impeller turns. At the same ratio nothing changes.
 *
 * @example atAnotherRatio({ input: smallerPulley, spread }, fit).input.work.factor
 */
export function atAnotherRatio({ input, spread }: MatchCase, fit: MatchFit): MatchCase {
  const factor = input.work.factor * moreLost(input, fit);
  return {
    input: factor === input.work.factor ? input : { ...input, work: { ...input.work, factor } },
    spread: [...spread, ...openedBySpeed(input, fit)],
  };
}

/**
 * What a kilogram of air lost of its work against the engine without supercharger, by spark taken back and a rich mixture, goes with boost, and boost
 * with the square of the impeller's speed: twice the boost, twice the loss. A gain stays as it is. Factor on the work of the fitted pulls.
 */
export function moreLost(input: MatchInput, { ground, lostWork }: MatchFit): number {
  const faster = (overallRatioOf(input) / mean(ground.overallRatios)) ** 2;
  return Math.max(LEAST_WORK, 1 - lostWork * faster) / (1 - lostWork);
}

export function openedBySpeed(input: MatchInput, { ground }: MatchFit): SpreadGroup[] {
  const ratio = overallRatioOf(input);
  const nearest = Math.min(...ground.overallRatios.map((one) => Math.abs(Math.log(ratio / one))));
  if (!(nearest > SAME_RATIO)) return [];
  return [
    {
      key: `fit carried to a ratio of ${ratio.toFixed(4)}`,
      parts: ['head', 'work'],
      factor: [
        [OPEN_BY_SPEED.head * nearest, 0],
        [0, OPEN_BY_SPEED.work * nearest],
      ],
    },
  ];
}
