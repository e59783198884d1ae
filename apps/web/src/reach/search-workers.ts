import type { PartRunner, ReachInput } from '@pullbook/core/reach';
import type { SearchNews, SearchOrder } from './messages.ts';

/** Why there is no answer, in words for a person. */
export class SearchTrouble extends Error {
  override readonly name = 'SearchTrouble';
}

/** Two halve the time; more would take the cores from whatever else the machine does. */
export const WORKERS = 2;

/** Workers of a page that may search: they load their program when it opens, and are kept from one search to the next. */
export interface SearchWorkers {
  /** Workers for one search. */
  take(input: ReachInput): TakenWorkers;
  close(): void;
}

export interface TakenWorkers {
  /** Each worker takes the next part when it is free. */
  run: PartRunner;
  /** Over: what is idle is kept; a part under way fails with the reason, and its worker ends at once. */
  end(reason: unknown): void;
}

export function searchWorkers(): SearchWorkers {
  let ready: Worker[] = [];
  let isClosed = false;

  function standReady(): void {
    while (ready.length < WORKERS) {
      const worker = started();
      worker.onerror = () => {
        ready = ready.filter((one) => one !== worker);
      };
      ready.push(worker);
    }
  }

  standReady();
  return {
    take: (input) => {
      // One whose program did not arrive is asked for again here, where somebody waits to be told.
      const workers = Array.from({ length: WORKERS }, () => ready.pop() ?? started());
      return taken(input, workers, (idle) => {
        for (const worker of idle) {
          if (isClosed || ready.length === WORKERS) worker.terminate();
          else ready.push(worker);
        }
        if (!isClosed) standReady();
      });
    },
    close: () => {
      isClosed = true;
      for (const worker of ready) worker.terminate();
      ready = [];
    },
  };
}

interface Waiting {
  order: SearchOrder;
  resolve: (output: never) => void;
  reject: (reason: unknown) => void;
}

function taken(input: ReachInput, workers: Worker[], giveBack: (idle: Worker[]) => void): TakenWorkers {
  const queue: Waiting[] = [];
  const free = [...workers];
  const busy = new Map<Worker, Waiting>();
  let isOver = false;

  function dispatch(): void {
    while (free.length > 0 && queue.length > 0) {
      const worker = free.shift()!;
      const next = queue.shift()!;
      busy.set(worker, next);
      worker.postMessage(next.order);
    }
  }

  for (const worker of workers) {
    worker.onmessage = ({ data: news }: MessageEvent<SearchNews>) => {
      const waiting = busy.get(worker);
      busy.delete(worker);
      free.push(worker);
      if ('output' in news) waiting?.resolve(news.output as never);
      else waiting?.reject(new SearchTrouble(`The search ended: ${news.trouble}.`));
      dispatch();
    };
    worker.onerror = (event) => {
      if (!busy.has(worker)) free.splice(free.indexOf(worker), 1);
      worker.terminate();
      end(new SearchTrouble(`The search ended: ${event.message || 'its program did not arrive'}.`));
    };
    worker.postMessage({ input } satisfies SearchOrder);
  }

  function end(reason: unknown): void {
    if (isOver) return;
    for (const [worker, { reject }] of busy) {
      worker.terminate();
      reject(reason);
    }
    for (const { reject } of queue.splice(0)) reject(reason);
    busy.clear();
    isOver = true;
    giveBack(free.splice(0));
  }

  const run: PartRunner = (name, given) =>
    new Promise((resolve, reject) => {
      queue.push({ order: { name, given } as SearchOrder, resolve, reject });
      dispatch();
    });
  return { run, end };
}

function started(): Worker {
  return new Worker(new URL('./reach-worker.ts', import.meta.url), { type: 'module' });
}
