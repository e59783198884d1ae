import {
  answerOf,
  groupCount,
  type LadderRung,
  type ReachAnswer,
  type ReachInput,
  type ReachProgress,
  type Screened,
} from '@pullbook/core/reach';
import { type SearchWorkers, searchWorkers } from './search-workers.ts';

/** Two halve the time; more would take the cores from whatever else the machine does. */
const WORKERS = 2;
/** Sets of changes that a worker looks at before it takes the next. */
const IN_A_SLICE = 24;
/** Share of the work by time, about, that is done when the ladder stands. */
const LOOKED = 0.5;

/** How a search says how far it is, and how it is ended. */
interface SearchOptions {
  signal: AbortSignal;
  onProgress: (progress: ReachProgress) => void;
}

/**
 * Searches beside the page, which goes on living, in parts that workers share; the answer is that of `reach` in one thread. Cancelled
 * by `signal` at once.
 *
 * @example const answer = await searchReach(bundle.input, { signal, onProgress })
 */
export async function searchReach(input: ReachInput, options: SearchOptions): Promise<ReachAnswer> {
  const { signal } = options;
  const workers = searchWorkers(input, WORKERS);
  const cancel = () => workers.end(signal.reason);
  signal.addEventListener('abort', cancel, { once: true });
  try {
    return await searched(input, workers, options);
  } finally {
    signal.removeEventListener('abort', cancel);
    workers.end(new Error('the search is over'));
  }
}

async function searched(
  input: ReachInput,
  workers: SearchWorkers,
  { onProgress }: SearchOptions,
): Promise<ReachAnswer> {
  const screened = await screenedBy(input, workers, onProgress);
  const ladder = await workers.run('ladder', { screened, isWhole: true });
  const rungs = [...ladder.rungs];
  const toDo = 1 + rungs.length + input.builds.length;
  let done = 0;
  const told = <Part>(part: Part): Part => {
    done += 1;
    onProgress({ share: LOOKED + ((1 - LOOKED) * done) / toDo, rungs: [...rungs] });
    return part;
  };
  onProgress({ share: LOOKED, rungs: [...rungs] });
  const banded = [ladder.now, ...rungs].map(async (rung, place): Promise<LadderRung> => {
    const one = await workers.run('band', { rung });
    if (place > 0) rungs[place - 1] = one;
    return told(one);
  });
  const left = input.builds.map(async (_, place) => told(await workers.run('left', { place })));
  return answerOf(input, ladder, ...(await Promise.all([Promise.all(banded), Promise.all(left)])));
}

/** All parts screened; what the ladder looks like by then is said once after the first ones. */
async function screenedBy(
  input: ReachInput,
  workers: SearchWorkers,
  onProgress: SearchOptions['onProgress'],
): Promise<Screened[]> {
  const of = Math.max(1, Math.ceil(groupCount(input) / IN_A_SLICE));
  let came = 0;
  let rungs: LadderRung[] = [];
  const told = () => onProgress({ share: (LOOKED * came) / of, rungs });
  const screen = async (part: number): Promise<Screened> => {
    const one = await workers.run('screen', { part, of });
    came += 1;
    told();
    return one;
  };
  const parts = Array.from({ length: of }, (_, part) => part);
  const first = await Promise.all(parts.slice(0, WORKERS).map(screen));
  if (of <= WORKERS) return first;
  const ladderSoFar = workers.run('ladder', { screened: first, isWhole: false }).then((ladder) => {
    rungs = ladder.rungs;
    told();
  });
  const [rest] = await Promise.all([Promise.all(parts.slice(WORKERS).map(screen)), ladderSoFar]);
  return [...first, ...rest];
}
