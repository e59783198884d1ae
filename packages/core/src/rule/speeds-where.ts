import type { MatchState } from '../airpath/index.ts';
import { speedFigure, speedRange } from '../quantity/index.ts';
import { type Said, said } from '../remark/index.ts';
import type { MatchAtHand } from './match-at-hand.ts';

/** Speeds at which the match is in one of these states: `from 3,000 to 3,500 rpm`; `null`: at none. */
export function speedsIn(
  at: MatchAtHand,
  states: readonly MatchState[],
  counts: (node: number) => boolean = () => true,
): Said | null {
  return speedsWhere(at, (node) => states.includes(at.curve.state[node]!) && counts(node));
}

/** Speeds at which something holds, said the same way. */
export function speedsWhere({ curve }: MatchAtHand, holds: (node: number) => boolean): Said | null {
  const nodes = [...curve.engineSpeedRpm.keys()].filter(holds);
  const [first, last] = [nodes[0], nodes.at(-1)];
  if (first === undefined || last === undefined) return null;
  const [low, high] = [curve.engineSpeedRpm[first]!, curve.engineSpeedRpm[last]!];
  if (first === last) return said`at ${speedFigure(low)}`;
  const isThroughout = nodes.length === last - first + 1;
  return said`${isThroughout ? '' : 'in places '}between ${speedRange(low, high, ' and ')}`;
}
