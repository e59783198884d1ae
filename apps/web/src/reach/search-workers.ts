import type { ReachInput } from '@pullbook/core/reach';
import type { PartName, SearchNews, SearchOrder, SearchParts } from './messages.ts';

/** Why there is no answer, in words for a person. */
export class SearchTrouble extends Error {
  override readonly name = 'SearchTrouble';
}

interface Waiting {
  order: SearchOrder;
  resolve: (output: never) => void;
  reject: (reason: unknown) => void;
}

/** Parts of one search, done by as many workers as were started, each taking the next part when it is free. */
export interface SearchWorkers {
  run<Name extends PartName>(
    name: Name,
    given: SearchParts[Name]['given'],
  ): Promise<SearchParts[Name]['gives']>;
  /** Ends the workers at once; parts under way fail with the reason. */
  end(reason: unknown): void;
}

export function searchWorkers(input: ReachInput, count: number): SearchWorkers {
  const queue: Waiting[] = [];
  const free = Array.from({ length: count }, () => started(input));
  const all = [...free];
  const busy = new Map<Worker, Waiting>();

  function dispatch(): void {
    while (free.length > 0 && queue.length > 0) {
      const worker = free.shift()!;
      const next = queue.shift()!;
      busy.set(worker, next);
      worker.postMessage(next.order);
    }
  }

  for (const worker of all) {
    worker.onmessage = ({ data: news }: MessageEvent<SearchNews>) => {
      const waiting = busy.get(worker);
      busy.delete(worker);
      free.push(worker);
      if ('output' in news) waiting?.resolve(news.output as never);
      else waiting?.reject(new SearchTrouble(`The search ended: ${news.trouble}.`));
      dispatch();
    };
    worker.onerror = (event) =>
      end(new SearchTrouble(`The search ended: ${event.message || 'its program did not arrive'}.`));
  }

  function end(reason: unknown): void {
    for (const worker of all) worker.terminate();
    for (const { reject } of [...busy.values(), ...queue.splice(0)]) reject(reason);
    busy.clear();
    free.length = 0;
  }

  return {
    run: (name, given) =>
      new Promise((resolve, reject) => {
        queue.push({ order: { name, given } as SearchOrder, resolve, reject });
        dispatch();
      }),
    end,
  };
}

function started(input: ReachInput): Worker {
  const worker = new Worker(new URL('./reach-worker.ts', import.meta.url), { type: 'module' });
  worker.postMessage({ input } satisfies SearchOrder);
  return worker;
}
