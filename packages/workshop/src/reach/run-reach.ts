import {
  answerOf,
  groupCount,
  type LadderRung,
  type ReachAnswer,
  type ReachInput,
  type ReachProgress,
  type Screened,
  type WhatIsLeft,
} from '@pullbook/core/reach';
import { longWork } from '../long-work/long-work.ts';

export interface RunReachOptions {
  /** Ends the search: it then fails with the signal's reason. */
  signal?: AbortSignal | undefined;
  onProgress?: ((progress: ReachProgress) => void) | undefined;
}

/** Sets of changes that one thread looks at before it takes others. */
const IN_A_SLICE = 48;
/** Share of the work by time, about, that is done when the ladder stands. */
const LOOKED = 0.5;

/**
 * A search off the main thread, in parts that the threads share; the answer is that of `reach` in one. Ask `troubleOfTarget` first: a
 * bundle of `reachOfCombination` was asked.
 */
export async function runReach(
  input: ReachInput,
  { signal, onProgress }: RunReachOptions = {},
): Promise<ReachAnswer> {
  const options = signal === undefined ? {} : { signal };
  const of = Math.max(1, Math.ceil(groupCount(input) / IN_A_SLICE));
  let looked = 0;
  const screened: Screened[] = await inTurns(
    Array.from({ length: of }, (_, part) => async () => {
      const one = await longWork.run('screenReach', { input, part, of }, options);
      looked += 1;
      onProgress?.({ share: (LOOKED * looked) / of, rungs: [] });
      return one;
    }),
  );
  const ladder = await longWork.run('ladderOfScreened', { input, screened }, options);
  const rungs = [...ladder.rungs];
  onProgress?.({ share: LOOKED, rungs });
  const toDo = rungs.length + 1 + input.builds.length;
  let done = 0;
  const told = <T>(one: T): T => {
    done += 1;
    onProgress?.({ share: LOOKED + ((1 - LOOKED) * done) / toDo, rungs });
    return one;
  };
  const banded: LadderRung[] = await inTurns(
    [ladder.now, ...rungs].map((rung, place) => async () => {
      const one = await longWork.run('bandedRung', { input, rung }, options);
      if (place > 0) rungs[place - 1] = one;
      return told(one);
    }),
  );
  const left: (WhatIsLeft | null)[] = await inTurns(
    input.builds.map(
      (_, place) => async () => told(await longWork.run('whatIsLeft', { input, place }, options)),
    ),
  );
  return answerOf(input, ladder, banded, left);
}

/** As many at once as there are threads: the rest wait here, where they can be given up. */
const AT_ONCE = 2;

/** Work done by a few at once; what comes of it stands in the order of the work. */
async function inTurns<T>(work: readonly (() => Promise<T>)[]): Promise<T[]> {
  const done = new Array<T>(work.length);
  let next = 0;
  const turn = async () => {
    while (next < work.length) {
      const place = next++;
      done[place] = await work[place]!();
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, turn));
  return done;
}
