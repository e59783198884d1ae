import { parentPort } from 'node:worker_threads';
import type { Order, Reply } from './messages.ts';
import type { JobContext, Jobs } from './model.ts';
import { ownedBuffers } from './owned-buffers.ts';

/** The thread's side: does one order after the other. Called once, by the file that the thread runs. */
export function serveJobs(jobs: Jobs): void {
  if (parentPort === null) throw new Error('Jobs are served in a worker thread only.');
  const port = parentPort;
  const reply = (message: Reply) => port.postMessage(message, ownedBuffers(message));
  port.on('message', async ({ name, input }: Order) => {
    try {
      const job = jobs[name] as ((input: unknown, context: JobContext) => unknown) | undefined;
      if (!job) throw new Error(`there is no job "${name}"`);
      const output = await job(input, { progress: (share) => reply({ kind: 'progress', share }) });
      reply({ kind: 'done', output });
    } catch (trouble) {
      // Sent, an error keeps its message only; a file that is not there says so by its code.
      reply({ kind: 'failed', trouble, properties: { ...(trouble as object) } });
    }
  });
}
