import { Worker } from 'node:worker_threads';
import type { Order, Reply } from './messages.ts';
import type { Computing, Jobs, RunOptions } from './model.ts';
import { ownedBuffers } from './owned-buffers.ts';

interface Waiting {
  order: Order;
  options: RunOptions;
  resolve: (output: never) => void;
  reject: (trouble: unknown) => void;
  /** Lets go of the signal: a run that is over has nothing to end. */
  letGo: () => void;
}

/**
 * Computing in up to `count` threads that run the built file `file`, which calls `serveJobs`. Threads are started when there
 * is work and kept for more; an idle one keeps no program alive. A run that is cancelled takes its thread with it.
 *
 * @example const computing = threads<typeof jobs>(new URL('./worker.mjs', import.meta.url), 2);
 */
export function threads<Table extends Jobs>(file: URL, count: number): Computing<Table> {
  const idle: Worker[] = [];
  const all = new Map<Worker, Waiting | null>();
  const queue: Waiting[] = [];

  function dispatch(): void {
    while (queue.length > 0 && (idle.length > 0 || all.size < count)) {
      const next = queue.shift() as Waiting;
      if (next.options.signal?.aborted) next.reject(next.options.signal.reason);
      else hand(idle.pop() ?? start(), next);
    }
  }

  function hand(worker: Worker, waiting: Waiting): void {
    const { order, options } = waiting;
    all.set(worker, waiting);
    worker.ref();
    const end = () => drop(worker, waiting, options.signal?.reason);
    options.signal?.addEventListener('abort', end, { once: true });
    waiting.letGo = () => options.signal?.removeEventListener('abort', end);
    try {
      worker.postMessage(order, options.giveAway ? ownedBuffers(order.input) : []);
    } catch (trouble) {
      drop(worker, waiting, trouble);
    }
  }

  function start(): Worker {
    const worker = new Worker(file);
    worker.on('message', (reply: Reply) => take(worker, reply));
    worker.on('error', (trouble) => drop(worker, all.get(worker) ?? null, trouble));
    worker.on('exit', (code) =>
      drop(worker, all.get(worker) ?? null, new Error(`a computing thread ended by itself (${code})`)),
    );
    return worker;
  }

  function take(worker: Worker, reply: Reply): void {
    const waiting = all.get(worker);
    if (!waiting) return;
    if (reply.kind === 'progress') {
      waiting.options.onProgress?.(reply.share);
      return;
    }
    waiting.letGo();
    all.set(worker, null);
    worker.unref();
    idle.push(worker);
    if (reply.kind === 'done') waiting.resolve(reply.output as never);
    else waiting.reject(Object.assign(reply.trouble as object, reply.properties));
    dispatch();
  }

  /** The thread is given up; what it was at fails. */
  function drop(worker: Worker, waiting: Waiting | null, trouble: unknown): void {
    if (waiting !== (all.get(worker) ?? null) || !all.has(worker)) return;
    all.delete(worker);
    if (idle.includes(worker)) idle.splice(idle.indexOf(worker), 1);
    waiting?.letGo();
    waiting?.reject(trouble);
    void worker.terminate();
    dispatch();
  }

  return {
    run: (name, input, options = {}) =>
      new Promise((resolve, reject) => {
        queue.push({ order: { name, input }, options, resolve, reject, letGo: () => undefined });
        dispatch();
      }),
    close: async () => {
      const ended = new Error('computing was closed');
      for (const waiting of queue.splice(0)) waiting.reject(ended);
      const workers = [...all];
      all.clear();
      idle.length = 0;
      for (const [, waiting] of workers) waiting?.reject(ended);
      await Promise.all(workers.map(([worker]) => worker.terminate()));
    },
  };
}
