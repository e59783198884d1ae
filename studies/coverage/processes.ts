import { type ChildProcess, fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { Tally } from './tally.ts';

/** A stretch of a case, to be run by whoever is free. */
export interface Order {
  caseId: string;
  stretch: number;
  runs: number;
}

export type Reply = { order: Order; tally: Tally };

/** Runs all orders in `count` processes of this same program's kind; `take` gets each as it comes back. */
export async function inProcesses(
  orders: readonly Order[],
  count: number,
  take: (reply: Reply) => void,
): Promise<void> {
  const queue = [...orders];
  await Promise.all(Array.from({ length: count }, () => worker(queue, take)));
}

function worker(queue: Order[], take: (reply: Reply) => void): Promise<void> {
  return new Promise((resolve, reject) => {
    // Started the way this program was, so that the loader of TypeScript is there too.
    const child: ChildProcess = fork(fileURLToPath(new URL('./child.ts', import.meta.url)));
    const next = () => {
      const order = queue.shift();
      if (order) child.send(order);
      else child.disconnect();
    };
    child.on('message', (reply: Reply) => {
      take(reply);
      next();
    });
    child.on('error', reject);
    child.on('exit', (code) => (code === 0 ? resolve() : reject(new Error(`A process ended with ${code}.`))));
    next();
  });
}
