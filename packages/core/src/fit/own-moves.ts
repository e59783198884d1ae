import { keyOfBaseline, type MatchInput } from '../airpath/index.ts';
import type { MoveId } from './model.ts';

/** What may belong to one combination alone and not to engine and unit: its day, its belt, its spark, what another cam takes. */
export const OWN_MOVES = [
  'headScale',
  'swallowingScale',
  'workFactor',
  'head 1',
  'head 2',
  'swallowing 1',
  'swallowing 2',
  'work 1',
  'work 2',
] as const satisfies readonly MoveId[];

export type OwnMoveId = (typeof OWN_MOVES)[number];

/** One deviation between two set-ups of one engine: tension of the belt, oil, fuel, spark by knock (common practice, no source). */
const OF_A_SET_UP: Record<OwnMoveId, number> = {
  headScale: 0.004,
  swallowingScale: 0.005,
  workFactor: 0.008,
  'head 1': 0.002,
  'head 2': 0.002,
  'swallowing 1': 0.004,
  'swallowing 2': 0.003,
  'work 1': 0.005,
  'work 2': 0.003,
};

/** And of an engine whose baseline was scaled or is another's: a gain under boost is not the gain without (common practice, no source). */
const OF_ANOTHER_ENGINE: Record<OwnMoveId, number> = {
  headScale: 0.015,
  swallowingScale: 0.04,
  workFactor: 0.03,
  'head 1': 0.015,
  'head 2': 0.01,
  'swallowing 1': 0.03,
  'swallowing 2': 0.02,
  'work 1': 0.02,
  'work 2': 0.01,
};

/** Deviations of what a case has of its own beside a fit on that baseline. */
export const ownSpread = (input: MatchInput, baselineOfFit: string): Record<OwnMoveId, number> =>
  keyOfBaseline(input.baseline) === baselineOfFit ? OF_A_SET_UP : OF_ANOTHER_ENGINE;
