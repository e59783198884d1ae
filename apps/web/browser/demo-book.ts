import { execFileSync } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { builtProgram } from './built-program.ts';
import { DEMO_BOOK } from './start.ts';

/** Makes the demo once for all files of tests, before the first: each begins on a copy of its own. */
export default async function makeDemoBook(): Promise<() => Promise<void>> {
  const folder = await mkdtemp(join(tmpdir(), 'pullbook-demo-'));
  const book = join(folder, 'book');
  execFileSync(process.execPath, [builtProgram(), 'demo', '--book', book]);
  process.env[DEMO_BOOK] = book;
  return () => rm(folder, { recursive: true, force: true });
}
