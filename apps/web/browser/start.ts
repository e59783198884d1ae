import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { cp, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { builtProgram } from './built-program.ts';

/** Variable of the surroundings: folder of a demo book to copy; missing: it is made anew, some seconds. */
export const DEMO_BOOK = 'PULLBOOK_DEMO_BOOK';

export interface RunningPullbook {
  address: string;
  /** Folder of the book. */
  book: string;
  stop: () => Promise<void>;
}

/**
 * Starts the built program itself on a book of its own, as a person would: the demo, or an empty one. `before`: what happened
 * to the book before the start.
 */
export async function startPullbook(
  book: 'demo' | 'empty',
  before?: (book: string) => Promise<void>,
): Promise<RunningPullbook> {
  const program = builtProgram();
  const folder = await mkdtemp(join(tmpdir(), 'pullbook-browser-'));
  if (book === 'demo') await makeDemo(program, join(folder, 'book'));
  await before?.(join(folder, 'book'));
  const server = spawn(
    process.execPath,
    [program, 'serve', '--book', join(folder, 'book'), '--port', '0', '--json'],
    { stdio: ['ignore', 'pipe', 'pipe'] },
  );
  const ended = new Promise<void>((resolve) => server.once('exit', () => resolve()));
  return {
    address: await addressOf(server),
    book: join(folder, 'book'),
    stop: async () => {
      server.kill('SIGTERM');
      await ended;
      await rm(folder, { recursive: true, force: true });
    },
  };
}

async function makeDemo(program: string, book: string): Promise<void> {
  const made = process.env[DEMO_BOOK];
  if (made === undefined) execFileSync(process.execPath, [program, 'demo', '--book', book]);
  else await cp(made, book, { recursive: true });
}

/** The address that the program prints once it answers. */
function addressOf(server: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    let complained = '';
    server.stderr?.on('data', (bytes) => {
      complained += bytes;
    });
    server.stdout?.on('data', (bytes) => {
      said += bytes;
      const address = /"address":\s*"([^"]+)"/.exec(said)?.[1];
      if (address !== undefined) resolve(address);
    });
    server.once('exit', (code) =>
      reject(new Error(`pullbook serve ended with ${code}: ${said}${complained}`)),
    );
  });
}
