import { bandedRung } from './banded-rung.ts';
import { type Ladder, ladderOf } from './ladder.ts';
import type { ReachAnswer, ReachInput, ReachProgress, WhatIsLeft } from './model.ts';
import { answerOf } from './reach.ts';
import { groupCount, type Screened, screenReach } from './screen.ts';
import { whatIsLeft } from './what-is-left.ts';
import type { LadderRung } from './whole-rung.ts';

/** The parts of a search, what each is given beside the input, and what it gives. All of it is plain data. */
export interface ReachParts {
  screen: { given: { part: number; of: number }; gives: Screened };
  ladder: { given: { screened: Screened[]; isWhole: boolean }; gives: Ladder };
  band: { given: { rung: LadderRung }; gives: LadderRung };
  left: { given: { place: number }; gives: WhatIsLeft | null };
}

const PARTS: {
  [Name in keyof ReachParts]: (
    input: ReachInput,
    given: ReachParts[Name]['given'],
  ) => ReachParts[Name]['gives'];
} = {
  screen: screenReach,
  ladder: (input, { screened, isWhole }) => ladderOf(input, screened, isWhole),
  band: (input, { rung }) => bandedRung(input, rung),
  left: (input, { place }) => whatIsLeft(input, place),
};

/** One part, done here. */
export const reachPart = <Name extends keyof ReachParts>(
  input: ReachInput,
  name: Name,
  given: ReachParts[Name]['given'],
): ReachParts[Name]['gives'] => PARTS[name](input, given);

/** Has one part done elsewhere: by a thread, or by a worker of the page. Fails where the search is given up. */
export type PartRunner = <Name extends keyof ReachParts>(
  name: Name,
  given: ReachParts[Name]['given'],
) => Promise<ReachParts[Name]['gives']>;

export interface InPartsOptions {
  /** As many parts are given out at a time: the rest wait here, where they can be given up. */
  atOnce: number;
  onProgress?: ((progress: ReachProgress) => void) | undefined;
}

/** Sets of changes that are looked at in one part. */
const IN_A_PART = 24;
/** Share of the work by time, about, that is done when the ladder stands. */
const LOOKED = 0.4;

/**
 * A search shared out in parts; the answer is that of `reach` in one. What the ladder looks like so far is said once after the first parts, of the
 * simplest changes: that costs a part of its own.
 *
 * @example await reachInParts(input, async (name, given) => reachPart(input, name, given), { atOnce: 1 })
 */
export async function reachInParts(
  input: ReachInput,
  run: PartRunner,
  { atOnce, onProgress }: InPartsOptions,
): Promise<ReachAnswer> {
  const screened = await screenedBy(input, run, { atOnce, onProgress });
  const ladder = await run('ladder', { screened, isWhole: true });
  const rungs = [...ladder.rungs];
  const afterwards = 1 + rungs.length + input.builds.length;
  let done = 0;
  const told = <Part>(part: Part): Part => {
    done += 1;
    onProgress?.({ share: LOOKED + ((1 - LOOKED) * done) / afterwards, rungs: [...rungs] });
    return part;
  };
  onProgress?.({ share: LOOKED, rungs: [...rungs] });
  const banded: LadderRung[] = [];
  const left: (WhatIsLeft | null)[] = [];
  await inTurns(atOnce, [
    ...[ladder.now, ...rungs].map((rung, place) => async () => {
      const one = await run('band', { rung });
      if (place > 0) rungs[place - 1] = one;
      banded[place] = told(one);
    }),
    ...input.builds.map((_, place) => async () => {
      left[place] = told(await run('left', { place }));
    }),
  ]);
  return answerOf(input, ladder, banded, left);
}

async function screenedBy(
  input: ReachInput,
  run: PartRunner,
  { atOnce, onProgress }: InPartsOptions,
): Promise<Screened[]> {
  const of = Math.max(1, Math.ceil(groupCount(input) / IN_A_PART));
  const screened: Screened[] = [];
  let came = 0;
  let rungs: LadderRung[] = [];
  const told = () => onProgress?.({ share: (LOOKED * came) / of, rungs });
  const parts = Array.from({ length: of }, (_, part) => async () => {
    screened[part] = await run('screen', { part, of });
    came += 1;
    told();
  });
  const first = Math.min(atOnce, of);
  await inTurns(atOnce, parts.slice(0, first));
  const soFar = async () => {
    const ladder = await run('ladder', { screened: screened.slice(0, first), isWhole: false });
    rungs = ladder.rungs;
    told();
  };
  const rest = parts.slice(first);
  await inTurns(atOnce, onProgress === undefined || rest.length === 0 ? rest : [soFar, ...rest]);
  return screened;
}

/** Work done by a few at once. */
async function inTurns(atOnce: number, work: readonly (() => Promise<void>)[]): Promise<void> {
  let next = 0;
  const turn = async () => {
    while (next < work.length) await work[next++]!();
  };
  await Promise.all(Array.from({ length: atOnce }, turn));
}
