import { createHash } from 'node:crypto';
import { request } from 'node:http';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Computing, threads } from '../../../packages/compute/src/index.ts';
import type { jobs } from '../../../packages/workshop/src/long-work/jobs.ts';
import { type RunningPullbook, startPullbook } from './start.ts';

const built = pathToFileURL(fileURLToPath(new URL('../../cli/dist/long-work.mjs', import.meta.url)));

let pullbook: RunningPullbook;
let computing: Computing<typeof jobs>;
beforeAll(async () => {
  pullbook = await startPullbook('empty');
  computing = threads<typeof jobs>(built, 1);
});
afterAll(async () => {
  await computing.close();
  await pullbook.stop();
});

function longLog(rows: number): Uint8Array {
  const lines = Array.from({ length: rows }, (_, row) => {
    const share = row / rows;
    return `${(row / 1000).toFixed(3)},${(2000 + 4000 * share).toFixed(1)},${(300 + 50 * share).toFixed(2)},0.82,${row % 97}`;
  });
  return new TextEncoder().encode(
    `Time (s),Engine speed (rpm),Torque (N·m),Lambda,Counter\n${lines.join('\n')}\n`,
  );
}

test('the built thread reads a file while this one goes on', async () => {
  const bytes = longLog(100_000);
  let turns = 0;
  let done = false;
  const turn = () => {
    turns += 1;
    if (!done) setImmediate(turn);
  };
  setImmediate(turn);
  const read = await computing.run('readFile', { name: 'long.csv', bytes });
  done = true;
  // In line there would be none: the whole reading is one step.
  expect(turns).toBeGreaterThan(1);
  expect(read.hash).toBe(createHash('sha256').update(bytes).digest('hex'));
  expect(read.reading.ok && read.reading.value.rowCount).toBe(100_000);
});

test('a file that is not there is named by its code, from the thread too', async () => {
  const missing = computing.run('readFile', { name: 'none.csv', path: '/nowhere/none.csv' });
  await expect(missing).rejects.toMatchObject({ code: 'ENOENT' });
});

test('the server answers others while it takes a long file in', async () => {
  const events: string[] = [];
  const { answer, sent } = upload(`${pullbook.address}/api/files/import`, longLog(200_000));
  const answered = answer.then((status) => {
    events.push(`file ${status}`);
  });
  await sent;
  const book = await fetch(`${pullbook.address}/api/book`);
  events.push(`book ${book.status}`);
  await answered;
  expect(events).toEqual(['book 200', 'file 201']);
});

/** Sends a file as a browser does; `sent`: its last byte has left. */
function upload(address: string, bytes: Uint8Array): { answer: Promise<number>; sent: Promise<void> } {
  const boundary = 'boundary-of-a-test';
  const head = `--${boundary}\r\nContent-Disposition: form-data; name="file"; filename="long.csv"\r\nContent-Type: text/csv\r\n\r\n`;
  const sending = request(address, {
    method: 'POST',
    headers: {
      'content-type': `multipart/form-data; boundary=${boundary}`,
      origin: new URL(address).origin,
    },
  });
  const sent = new Promise<void>((resolve) => sending.once('finish', () => resolve()));
  const answer = new Promise<number>((resolve, reject) => {
    sending.once('error', reject);
    sending.once('response', (response) => {
      response.resume();
      response.once('end', () => resolve(response.statusCode ?? 0));
    });
  });
  sending.write(head);
  sending.write(bytes);
  sending.end(`\r\n--${boundary}--\r\n`);
  return { answer, sent };
}
