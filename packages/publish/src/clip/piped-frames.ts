import { spawn } from 'node:child_process';

/** The encoder ended by itself before it had all frames, or with an error. */
export class EncoderTrouble extends Error {}

/** An encoder at work that is fed with frames. */
export interface EncoderAtWork {
  /** Hands over one frame; its memory may be written over when this is done. */
  take(frame: Uint8Array): Promise<void>;
  /** After the last frame: waits until the file is written. */
  finish(): Promise<void>;
  /** Ends it at once; what it wrote is to be thrown away. */
  stop(): Promise<void>;
}

/** So many signs of what the encoder says are kept, the last ones: that is where its trouble stands. */
const MOST_SAID = 4000;

export function startEncoder(command: string, wanted: readonly string[]): EncoderAtWork {
  const child = spawn(command, wanted, { stdio: ['pipe', 'ignore', 'pipe'] });
  let said = '';
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    said = (said + text).slice(-MOST_SAID);
  });
  const ended = new Promise<number | null>((resolve) => {
    child.once('close', (code) => resolve(code));
    child.once('error', (trouble) => {
      said = trouble.message;
      resolve(null);
    });
  });
  // What is told of a closed pipe is told better by how the program ended.
  child.stdin.on('error', () => undefined);
  const failed = ended.then((code): never => {
    throw new EncoderTrouble(said.trim() || `It ended with ${code ?? 'no code'}.`);
  });
  failed.catch(() => undefined);

  return {
    take: async (frame) => {
      const written = new Promise<void>((resolve, reject) => {
        child.stdin.write(frame, (trouble) => (trouble ? reject(trouble) : resolve()));
      });
      await Promise.race([written.catch(() => failed), failed]);
    },
    finish: async () => {
      child.stdin.end();
      if ((await ended) !== 0) await failed;
    },
    stop: async () => {
      if (child.exitCode === null && child.signalCode === null) child.kill('SIGKILL');
      await ended;
    },
  };
}
