import { type ReachAnswer, type ReachInput, type ReachProgress, reachInParts } from '@pullbook/core/reach';
import { type SearchWorkers, WORKERS } from './search-workers.ts';

/** How a search says how far it is, and how it is ended. */
interface SearchOptions {
  signal: AbortSignal;
  onProgress: (progress: ReachProgress) => void;
}

/**
 * Searches beside the page, which goes on living, in parts that workers share; the answer is that of `reach` in one thread. Cancelled
 * by `signal` at once.
 *
 * @example const answer = await searchReach(bundle.input, workers, { signal, onProgress })
 */
export async function searchReach(
  input: ReachInput,
  workers: SearchWorkers,
  { signal, onProgress }: SearchOptions,
): Promise<ReachAnswer> {
  signal.throwIfAborted();
  const { run, end } = workers.take(input);
  const cancel = () => end(signal.reason);
  signal.addEventListener('abort', cancel, { once: true });
  try {
    return await reachInParts(input, run, { atOnce: WORKERS, onProgress });
  } finally {
    signal.removeEventListener('abort', cancel);
    end(new Error('the search is over'));
  }
}
