import { createHash } from 'node:crypto';
import { mkdir, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Book, makeDemoBook, openBook } from '@pullbook/workshop';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildApp } from './app.ts';

const PORT = 4680;
/** More than a system numbers its programs by. */
const NO_PROGRAM = 2 ** 30;
const HOST = `127.0.0.1:${PORT}`;
const OWN = { host: HOST, origin: `http://${HOST}` };

let folder = '';
let book: Book;
let app: FastifyInstance;
let trial = '';

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-publishing-'));
  await mkdir(join(folder, 'web'));
  await writeFile(join(folder, 'web', 'index.html'), '<!doctype html><title>screens</title>');
  await makeDemoBook(join(folder, 'book'));
  book = await openBook(join(folder, 'book'));
  await mkdir(join(folder, 'book', 'outgoing', String(NO_PROGRAM), 'job'), { recursive: true });
  const folders = { web: join(folder, 'web'), fonts: folder };
  app = await buildApp({ book, folders, port: () => PORT });
  const trials = await book.trials();
  trial = trials.find(({ question }) => question.includes('longer cam add'))!.id;
}, 60_000);
afterAll(async () => {
  await app.close();
  await book.close();
  await rm(folder, { recursive: true, force: true });
});

const ask = (
  method: 'GET' | 'POST' | 'PATCH' | 'DELETE',
  url: string,
  payload?: object,
): ReturnType<FastifyInstance['inject']> =>
  app.inject({ method, url, headers: OWN, ...(payload && { payload }) }) as never;

/** Publishes and waits for what comes of it. */
async function published(what: object) {
  const started = await ask('POST', `/api/trials/${trial}/publish`, what);
  expect(started.statusCode).toBe(202);
  const job = `/api/publishing/${started.json().id}`;
  await expect.poll(async () => (await ask('GET', job)).json().state, { timeout: 30_000 }).not.toBe('making');
  return { job, ...(await ask('GET', job)).json() };
}

test('what a server that was killed left to hand over is gone when the next one starts', async () => {
  expect(await readdir(join(book.folder, 'outgoing'))).not.toContain(String(NO_PROGRAM));
});

describe('to look at', () => {
  test('the page has all it needs in one answer', async () => {
    const page = (await ask('GET', `/api/trials/${trial}/publish`)).json();
    expect(page.stills.map(({ name }: { name: string }) => name)).toContain('thumbnail');
    expect(page.runningOrder.steps.length).toBeGreaterThan(3);
    expect(page.leaving.pulls).toHaveLength(5);
    expect(page.formats).toMatchObject({ still: ['png', 'svg', 'pdf'], bundle: ['zip'] });
    expect(page.formats.clip).toContain('png');
    expect(page.stamp).not.toBe('');
  });

  test('a picture, the clip’s description, the report, which may ask for nothing', async () => {
    const still = await ask('GET', `/api/trials/${trial}/still?picture=gain&format=svg&size=square`);
    expect(still.headers['content-type']).toContain('image/svg+xml');
    expect(still.body).toContain('width="1080"');
    expect((await ask('GET', `/api/trials/${trial}/still?picture=alone&key=Z`)).json().error.code).toBe(
      'no-such-picture',
    );
    expect((await ask('GET', `/api/trials/${trial}/still?picture=none`)).statusCode).toBe(400);
    const clip = (await ask('GET', `/api/trials/${trial}/clip`)).json();
    expect(clip.steps[0]).toMatchObject({ id: 'asked' });
    const report = await ask('GET', `/api/trials/${trial}/report?format=html`);
    expect(report.headers['content-security-policy']).toContain("default-src 'none'");
    expect(report.body).toContain('<!doctype html>');
    expect((await ask('GET', `/api/publications?trial=${trial}`)).json()).toEqual([]);
  });
});

describe('made for a page', () => {
  test('one file comes as it is and is noted; several come as one zip', async () => {
    const one = await published({ kinds: ['still'], formats: ['svg'], pictures: ['alone:B'] });
    expect(one).toMatchObject({ state: 'done', share: 1, remarks: [] });
    // A page that was left meanwhile finds it until it is fetched.
    const open = async () => (await ask('GET', `/api/trials/${trial}/publishing`)).json();
    expect(await open()).toMatchObject([{ id: one.id, kinds: ['still'], state: 'done', file: one.file }]);
    const file = await ask('GET', `${one.job}/file`);
    expect(file.headers['content-disposition']).toContain('-alone-b-1920x1080-light.svg');
    expect(file.rawPayload).toHaveLength(one.file.bytes);
    expect(await open()).toEqual([]);
    const [noted] = (await ask('GET', `/api/publications?trial=${trial}`)).json();
    expect(noted).toMatchObject({ id: one.publicationId, stale: [] });
    expect(noted.files[0].sha256).toBe(createHash('sha256').update(file.rawPayload).digest('hex'));
    const two = await published({
      kinds: ['still'],
      formats: ['svg'],
      pictures: ['power', 'gain'],
      draft: true,
    });
    expect(two.publicationId).toBeNull();
    // One central header a file, by its signature (ZIP APPNOTE 4.3.12).
    const zip = (await ask('GET', `${two.job}/file`)).rawPayload.toString('latin1');
    expect(zip.split('PK\x01\x02')).toHaveLength(3);
  }, 60_000);

  test('cancelled, nothing of it is left', async () => {
    const more = { kinds: ['clip'], formats: ['png'], fps: 60, seconds: 60, draft: true };
    const started = (await ask('POST', `/api/trials/${trial}/publish`, more)).json();
    expect(started.state).toBe('making');
    const job = `/api/publishing/${started.id}`;
    expect((await ask('GET', `${job}/file`)).json().error.code).toBe('no-file-yet');
    const stopped = await ask('DELETE', job, {});
    expect(stopped.json()).toMatchObject({ state: 'cancelled', file: null });
    const left = await readdir(join(book.folder, 'outgoing'), { recursive: true });
    expect(left.filter((name) => name.includes(started.id))).toEqual([]);
    expect((await ask('GET', '/api/publishing/none')).statusCode).toBe(404);
  }, 60_000);

  test('what does not go together is said at once, and so is what is not for everyone', async () => {
    const wrong = await ask('POST', `/api/trials/${trial}/publish`, { kinds: ['still'], formats: ['mp4'] });
    expect([wrong.statusCode, wrong.json().error.code]).toEqual([400, 'format-of-kind']);
    expect((await ask('POST', `/api/trials/${trial}/publish`, { what: 1 })).json().error.code).toBe(
      'wrong-shape',
    );
    const unknown = await ask('POST', '/api/trials/nowhere/publish', { kinds: ['still'] });
    expect(unknown.statusCode).toBe(404);
    const held = (await book.trial(trial))!;
    await book.changeTrial({ ...held, audience: { who: 'shop', notBefore: null } }, 'for the test');
    const refused = await ask('POST', `/api/trials/${trial}/publish`, { kinds: ['still'] });
    expect([refused.statusCode, refused.json().error.code]).toEqual([400, 'not-for-everyone']);
    await book.changeTrial(held, 'open again');
  });
});

test('what a page made itself is noted; where it appeared is kept and checked', async () => {
  const file = { name: 'cam.mp4', kind: 'clip', bytes: 12, sha256: 'a'.repeat(64) };
  const noted = await ask('POST', `/api/trials/${trial}/publications`, { files: [file] });
  expect(noted.statusCode).toBe(201);
  const { id } = noted.json();
  const address = `/api/publications/${id}`;
  const links = [{ where: 'club magazine', day: '2026-05-01', note: 'page 12' }];
  expect((await ask('PATCH', address, { links })).statusCode).toBe(200);
  expect((await ask('PATCH', address, { links: [{ where: '' }] })).json().error.code).toBe('no-place');
  const all = (await ask('GET', '/api/publications')).json();
  expect(all.find((one: { id: string }) => one.id === id)).toMatchObject({ kinds: ['clip'], links });
});

test('a running order is kept with the trial, and a wrong one is refused with what is allowed', async () => {
  const step = { id: 'why', isShown: false, title: null, seconds: null };
  const change = (runningOrder: object | null) => ask('PATCH', `/api/trials/${trial}`, { runningOrder });
  expect((await change({ steps: [step], speed: 2 })).statusCode).toBe(200);
  const shown = (await ask('GET', `/api/trials/${trial}/publish`)).json().runningOrder;
  expect(shown.speed).toBe(2);
  expect(shown.steps.find(({ id }: { id: string }) => id === 'why').isShown).toBe(false);
  expect((await change({ steps: [step], speed: 90 })).json().error.message).toContain('0.25 to 4');
  expect((await change({ steps: [step, step], speed: 1 })).json().error.message).toContain('twice');
  expect((await change(null)).statusCode).toBe(200);
});
