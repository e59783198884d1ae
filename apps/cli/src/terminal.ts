/** Where a command reads its surroundings from and writes to; tests give their own. */
export interface Terminal {
  out: (text: string) => void;
  err: (text: string) => void;
  env: Record<string, string | undefined>;
  /** Whether a person watches standard error: only then is progress shown. */
  watched: boolean;
  /** Whether colours may be used on standard output. */
  colours: boolean;
  /** Settles when the program is asked to stop. */
  stopped: () => Promise<void>;
  /** Aborts when a person presses Ctrl+C: what is under way is put away cleanly. Pressed again, the program ends at once. */
  interrupted: () => AbortSignal;
}

/** The terminal of this process. Output is dropped quietly once its reader is gone (`pullbook list | head`). */
export function processTerminal(): Terminal {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (trouble: NodeJS.ErrnoException) => {
      if (trouble.code !== 'EPIPE') throw trouble;
    });
  }
  const { env } = process;
  return {
    out: (text) => process.stdout.write(text),
    err: (text) => process.stderr.write(text),
    env,
    watched: process.stderr.isTTY === true,
    colours: process.stdout.isTTY === true && !env.NO_COLOR && env.TERM !== 'dumb',
    stopped: () =>
      new Promise((stop) => {
        process.once('SIGINT', () => stop());
        process.once('SIGTERM', () => stop());
      }),
    interrupted: () => {
      const abort = new AbortController();
      for (const signal of ['SIGINT', 'SIGTERM']) process.once(signal, () => abort.abort());
      return abort.signal;
    },
  };
}
