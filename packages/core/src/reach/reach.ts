import { bandedRung } from './banded-rung.ts';
import { inOrder, withoutWorse } from './chosen.ts';
import { type Ladder, ladderOf } from './ladder.ts';
import type { KeptAnswer, ReachAnswer, ReachInput, Rung, WhatIsLeft } from './model.ts';
import { screenReach } from './screen.ts';
import { whatIsLeft } from './what-is-left.ts';
import type { LadderRung } from './whole-rung.ts';

/**
 * From a target to ways to it, cheapest first, each with its band, its chance and what binds first; and what is left in each supercharger. Here and in one go;
 * `reachInParts` shares the same parts out, says how far it is and can be given up. Ask `troubleOfTarget` first. A planning aid: makers' limits first.
 *
 * @example reach(input).rungs[0]?.changes[0]?.said.text // 'Blower pulley 78 mm in place of 84 mm'
 */
export function reach(input: ReachInput): ReachAnswer {
  const ladder = ladderOf(input, [screenReach(input, { part: 0, of: 1 })]);
  const banded = [ladder.now, ...ladder.rungs].map((rung) => bandedRung(input, rung));
  const left = input.builds.map((_, place) => whatIsLeft(input, place));
  return answerOf(input, ladder, banded, left);
}

/**
 * The answer of its parts.
 *
 * @param banded the rung of the engine as it is, then those of the ladder, in its order
 * @param left   by build
 */
export function answerOf(
  input: ReachInput,
  ladder: Ladder,
  banded: readonly LadderRung[],
  left: readonly (WhatIsLeft | null)[],
): ReachAnswer {
  const [now, ...rungs] = banded;
  const ways = rungs.map((rung) => ({
    rung,
    id: rung.id,
    changes: rung.changes,
    cost: rung.cost,
    reaches: rung.reaches,
    likely: rung.reaches ? rung.chance : rung.reached.value / input.target.power,
    margin: rung.bindsFirst?.margin ?? Number.POSITIVE_INFINITY,
  }));
  const [leastRemedy = null, ...remedies] = ladder.remedies;
  return {
    target: input.target,
    feasible: ladder.feasible,
    now: plainRung(now ?? ladder.now),
    rungs: withoutWorse(ways)
      .sort(inOrder)
      .map(({ rung }) => plainRung(rung)),
    left: left.flatMap((one) => one ?? []),
    reason: ladder.reason,
    leastRemedy,
    remedies,
    searched: ladder.searched,
    remarks: ladder.remarks,
  };
}

function plainRung({ picked: _, ...rung }: LadderRung): Rung {
  return rung;
}

/** An answer as it is kept: without what its rungs were made of, which can be made again. */
export function keptAnswer(answer: ReachAnswer): KeptAnswer['answer'] {
  const kept = (rung: Rung): Rung => ({ ...rung, made: null });
  return { ...answer, now: kept(answer.now), rungs: answer.rungs.map(kept) };
}
