import { spawn } from 'node:child_process';
import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { makeDemoBook } from '@pullbook/workshop';
import { afterAll, beforeAll, expect, test } from 'vitest';

const MAIN = fileURLToPath(new URL('./main.ts', import.meta.url));
const CAM = 'What does the longer cam add at the same pulley?';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-killed-'));
  await makeDemoBook(join(folder, 'book'));
}, 60_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

/** Publishes a long clip as a program of its own, and sends it a signal once frames are being written. */
async function stopped(
  out: string,
  signal: 'SIGINT' | 'SIGKILL',
): Promise<{ code: number | null; out: string }> {
  const clip = ['--kind', 'clip', '--format', 'png', '--seconds', '60', '--draft', '--json'];
  const child = spawn(
    process.execPath,
    ['--import', 'tsx', MAIN, 'publish', CAM, ...clip, '--out', out, '--book', join(folder, 'book')],
    { stdio: 'pipe' },
  );
  const ended = new Promise<number | null>((resolve) => child.once('exit', resolve));
  let said = '';
  child.stdout.on('data', (bytes) => {
    said += bytes;
  });
  const frames = async () =>
    (await readdir(out, { recursive: true }).catch(() => [])).filter((name) => name.endsWith('.png')).length;
  await expect.poll(frames, { timeout: 60_000 }).toBeGreaterThan(2);
  child.kill(signal);
  return { code: await ended, out: said };
}

test('Ctrl+C: code 130, nothing half-written, and the JSON says so', async () => {
  const { code, out } = await stopped(join(folder, 'interrupted'), 'SIGINT');
  expect(code).toBe(130);
  expect(JSON.parse(out)).toMatchObject({ files: [], publicationId: null, remarks: [{ code: 'cancelled' }] });
  expect(await readdir(join(folder, 'interrupted'))).toEqual([]);
}, 120_000);

test('killed: nothing stands under a final name', async () => {
  const out = join(folder, 'killed');
  await stopped(out, 'SIGKILL');
  const left = await readdir(out);
  expect(left.filter((name) => !name.startsWith('.pullbook-part-'))).toEqual([]);
  // The next one sweeps it: packages/workshop/src/publish/put-in-place.test.ts.
  expect(left).toHaveLength(1);
}, 120_000);
