import {
  type PartRunner,
  type ReachAnswer,
  type ReachInput,
  type ReachParts,
  type ReachProgress,
  reachInParts,
} from '@pullbook/core/reach';
import { longWork } from '../long-work/long-work.ts';

export interface RunReachOptions {
  /** Ends the search: it then fails with the signal's reason. */
  signal?: AbortSignal | undefined;
  onProgress?: ((progress: ReachProgress) => void) | undefined;
}

type PartName = keyof ReachParts;

/** As many as there are threads. */
const AT_ONCE = 2;

/**
 * A search off the main thread, in parts that the threads share; the answer is that of `reach` in one. Ask `troubleOfTarget` first: a
 * bundle of `reachOfCombination` was asked.
 */
export function runReach(
  input: ReachInput,
  { signal, onProgress }: RunReachOptions = {},
): Promise<ReachAnswer> {
  const options = signal === undefined ? {} : { signal };
  const run = (name: PartName, given: ReachParts[PartName]['given']) =>
    longWork.run('reachPart', { input, name, given }, options);
  return reachInParts(input, run as PartRunner, { atOnce: AT_ONCE, onProgress });
}
