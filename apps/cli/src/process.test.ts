import { spawn } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { stepTest } from './testing/captured.ts';

const MAIN = fileURLToPath(new URL('./main.ts', import.meta.url));
const start = (argv: string[]) =>
  spawn(process.execPath, ['--import', 'tsx', MAIN, ...argv], { stdio: 'pipe' });

const ended = (child: ReturnType<typeof start>): Promise<number | null> =>
  new Promise((resolve) => child.once('exit', resolve));

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-process-'));
  await writeFile(join(folder, 'run.csv'), stepTest(1));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

describe('as a program of its own', () => {
  test.each(['SIGINT', 'SIGTERM'] as const)('serve stops cleanly on %s', async (signal) => {
    const child = start(['serve', '--port', '0', '--book', join(folder, 'book')]);
    const end = ended(child);
    let said = '';
    child.stdout.on('data', (bytes) => {
      said += bytes;
    });
    await expect.poll(() => said, { timeout: 25_000 }).toContain('http://127.0.0.1:');
    child.kill(signal);
    expect(await end).toBe(0);
  });

  test('a reader that goes away ends nothing badly', async () => {
    const child = start(['import', join(folder, 'run.csv'), '--json', '--book', join(folder, 'book')]);
    const end = ended(child);
    child.stdout.destroy();
    let complaint = '';
    child.stderr.on('data', (bytes) => {
      complaint += bytes;
    });
    expect(await end).toBe(0);
    expect(complaint).toBe('');
  });
});
