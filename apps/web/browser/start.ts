import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const program = fileURLToPath(new URL('../../cli/bin/pullbook.mjs', import.meta.url));
const built = [
  new URL('../../cli/dist/pullbook.mjs', import.meta.url),
  new URL('../dist/index.html', import.meta.url),
].map((place) => fileURLToPath(place));

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
  for (const file of built) {
    if (!existsSync(file)) throw new Error(`${file} is not built yet. Run "npm run build" first.`);
  }
  const folder = await mkdtemp(join(tmpdir(), 'pullbook-browser-'));
  const isMadeFirst = before !== undefined && book === 'demo';
  if (isMadeFirst) execFileSync(process.execPath, [program, 'demo', '--book', join(folder, 'book')]);
  await before?.(join(folder, 'book'));
  const demo = book === 'demo' && !isMadeFirst ? ['--demo'] : [];
  const server = spawn(
    process.execPath,
    [program, 'serve', ...demo, '--book', join(folder, 'book'), '--port', '0', '--json'],
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
