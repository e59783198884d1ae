import type { Computing, JobContext, Jobs } from './model.ts';

/**
 * Computing in this very thread: for tests, and where there is no built worker. Nothing is sent, so nothing is given away.
 *
 * @example await inLine({ twice: (input: number) => 2 * input }).run('twice', 21) // 42
 */
export function inLine<Table extends Jobs>(jobs: Table): Computing<Table> {
  return {
    run: async (name, input, { signal, onProgress } = {}) => {
      signal?.throwIfAborted();
      const job = jobs[name] as (input: unknown, context: JobContext) => unknown;
      const output = await job(input, { progress: (share) => onProgress?.(share) });
      signal?.throwIfAborted();
      return output as never;
    },
    close: async () => undefined,
  };
}
