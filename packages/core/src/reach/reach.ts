import { bandedRung } from './banded-rung.ts';
import { inOrder, withoutWorse } from './chosen.ts';
import { type Ladder, ladderOf } from './ladder.ts';
import type { KeptAnswer, ReachAnswer, ReachInput, ReachProgress, Rung, WhatIsLeft } from './model.ts';
import { groupCount, type Screened, screenReach } from './screen.ts';
import { whatIsLeft } from './what-is-left.ts';
import type { LadderRung } from './whole-rung.ts';

/** Sets of changes looked at before the ladder so far is shown. */
const IN_A_SLICE = 24;
/** Shares of the work by time, about: looking, what is left, bands. */
const LOOKED = 0.4;

export interface ReachOptions {
  onProgress?: (progress: ReachProgress) => void;
  /** Asked between slices; `true` ends the search with what there is by then. */
  isCancelled?: () => boolean;
}

/**
 * From a target to ways to it, cheapest first, each with its band, its chance and what binds first; and what is left in each supercharger. In one thread; for
 * several the same is made in parts: `screenReach` by part, then `ladderOf`, then `bandedRung` and `whatIsLeft` one by one, put together by
 * `answerOf`. However it is made the answer is the same. Ask `troubleOfTarget` first. A planning aid: makers' limits first.
 *
 * @example reach(input).rungs[0]?.changes[0]?.said.text // 'Blower pulley 78 mm in place of 84 mm'
 */
export function reach(input: ReachInput, { onProgress, isCancelled }: ReachOptions = {}): ReachAnswer {
  const isOver = () => isCancelled?.() === true;
  const parts = Math.max(1, Math.ceil(groupCount(input) / IN_A_SLICE));
  const screened: Screened[] = [];
  for (let part = 0; part < parts && !isOver(); part++) {
    screened.push(screenReach(input, { part, of: parts }));
    if (onProgress !== undefined && part < parts - 1)
      onProgress({
        share: (LOOKED * (part + 1)) / parts,
        rungs: ladderOf(input, screened, false).rungs.map(plainRung),
      });
  }
  const ladder = ladderOf(input, screened);
  onProgress?.({ share: LOOKED, rungs: ladder.rungs.map(plainRung) });
  const toDo = ladder.rungs.length + 1 + input.builds.length;
  const banded: LadderRung[] = [];
  const told = () =>
    onProgress?.({
      share: LOOKED + ((1 - LOOKED) * (banded.length + left.length)) / toDo,
      rungs: [...banded.slice(1), ...ladder.rungs.slice(Math.max(0, banded.length - 1))].map(plainRung),
    });
  const left: (WhatIsLeft | null)[] = [];
  for (const rung of [ladder.now, ...ladder.rungs]) {
    banded.push(isOver() ? rung : bandedRung(input, rung));
    told();
  }
  for (let place = 0; place < input.builds.length && !isOver(); place++) {
    left.push(whatIsLeft(input, place));
    told();
  }
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
