import type { FastifyReply } from 'fastify';

/** Aborts when the one who asked goes away before the answer is written: nobody waits for it any more. */
export function goneAway({ raw }: FastifyReply): AbortSignal {
  const abort = new AbortController();
  raw.once('close', () => {
    if (!raw.writableFinished) abort.abort(new Error('The one who asked went away.'));
  });
  return abort.signal;
}
