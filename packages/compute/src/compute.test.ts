import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Computing, inLine, type JobContext, threads } from './index.ts';
import { ownedBuffers } from './owned-buffers.ts';

const jobs = {
  doubled: (input: { values: Float64Array }) => ({ values: input.values.map((value) => 2 * value) }),
  counted: (input: number, { progress }: JobContext) => {
    for (let step = 1; step <= input; step++) progress(step / input);
    return input;
  },
  failing: (input: string) => {
    throw new RangeError(input);
  },
  endless: (_input: null) => {
    for (;;);
  },
};

let folder = '';
let computing: Computing<typeof jobs>;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-compute-'));
  const source = join(folder, 'source.ts');
  const serve = fileURLToPath(new URL('./serve-jobs.ts', import.meta.url));
  const table = Object.entries(jobs).map(([name, job]) => `${name}: ${job.toString()}`);
  await writeFile(
    source,
    `import { serveJobs } from ${JSON.stringify(serve)};\nserveJobs({ ${table.join(',\n')} });\n`,
  );
  const outfile = join(folder, 'worker.mjs');
  await build({ entryPoints: [source], outfile, bundle: true, format: 'esm', platform: 'node' });
  computing = threads<typeof jobs>(pathToFileURL(outfile), 2);
});
afterAll(async () => {
  await computing.close();
  await rm(folder, { recursive: true, force: true });
});

describe.each([
  ['in threads', () => computing],
  ['in line', () => inLine(jobs)],
])('%s', (_, where) => {
  test('a job gives its result', async () => {
    const { values } = await where().run('doubled', { values: Float64Array.of(1, Number.NaN, -0) });
    expect([...values]).toEqual([2, Number.NaN, -0]);
  });

  test('progress is told before the result', async () => {
    const told: number[] = [];
    await where().run('counted', 4, { onProgress: (share) => told.push(share) });
    expect(told).toEqual([0.25, 0.5, 0.75, 1]);
  });

  test('a job that throws fails its run, and the next one is done', async () => {
    await expect(where().run('failing', 'out of it')).rejects.toThrow('out of it');
    expect(await where().run('counted', 1)).toBe(1);
  });

  test('what was cancelled before it began is not done', async () => {
    const signal = AbortSignal.abort(new Error('not wanted'));
    await expect(where().run('counted', 1, { signal })).rejects.toThrow('not wanted');
  });
});

test('a thread that never comes back is ended by its signal, and others work meanwhile and after', async () => {
  const abort = new AbortController();
  const stuck = computing.run('endless', null, { signal: abort.signal });
  const other = computing.run('endless', null, { signal: abort.signal });
  const waits = computing.run('counted', 3);
  abort.abort(new Error('enough'));
  await expect(stuck).rejects.toThrow('enough');
  await expect(other).rejects.toThrow('enough');
  expect(await waits).toBe(3);
});

test('given away, an array is not copied and is empty here', async () => {
  const values = Float64Array.of(1, 2, 3);
  const given = await computing.run('doubled', { values }, { giveAway: true });
  expect(values.length).toBe(0);
  expect([...given.values]).toEqual([2, 4, 6]);
});

test('runs under way fail when computing is closed', async () => {
  const own = threads<typeof jobs>(pathToFileURL(join(folder, 'worker.mjs')), 1);
  const runs = [own.run('endless', null), own.run('counted', 1)];
  const ended = Promise.allSettled(runs);
  await own.close();
  expect((await ended).map(({ status }) => status)).toEqual(['rejected', 'rejected']);
});

test('only whole memory is handed over', () => {
  const whole = Float64Array.of(1, 2);
  const part = new Float64Array(4).subarray(1);
  expect(ownedBuffers({ a: [whole, part], b: new Map([['x', whole]]) })).toEqual([whole.buffer]);
});
