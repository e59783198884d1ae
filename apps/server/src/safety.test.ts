import { appendFile, cp, mkdir, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Book, openBook, rescueBook } from '@pullbook/workshop';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { buildApp } from './app.ts';

const PORT = 4680;
let folder = '';
let book: Book;
let app: FastifyInstance;
const at = (name: string): string => join(folder, name);

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-server-safety-'));
  await mkdir(at('web'));
  await writeFile(join(at('web'), 'index.html'), '<!doctype html><meta name="shop-settings" content="" />');
  await (await openBook(at('book'), { create: { name: 'Shop' } })).close();
  // As after a start on a damaged book: the report of its rescue is still to be told.
  await rescueBook(at('book'), new Date('2026-03-14T10:00:00.000Z'));
  book = await openBook(at('book'));
  app = await buildApp({ book, folders: { web: at('web'), fonts: at('web') }, port: () => PORT });
  const added = await ask('POST', '/api/pulls', {
    name: 'Remembered peak',
    summary: { peakPower: '300 kW' },
    origin: 'remembered',
  });
  if (added.statusCode !== 201) throw new Error(added.body);
});
afterAll(async () => {
  await app.close();
  await book.close();
  await rm(folder, { recursive: true, force: true });
});

async function ask(method: 'GET' | 'POST' | 'PATCH', url: string, payload?: object) {
  const host = `127.0.0.1:${PORT}`;
  const headers = { host, origin: `http://${host}` };
  return app.inject({ method, url, headers, ...(payload === undefined ? {} : { payload }) });
}

const SPEED = {
  meaning: 'engineSpeed',
  name: 'rpm',
  unit: 'r/min',
  kind: 'engineSpeed',
  values: Float64Array.of(2000, 2500),
  origin: 'measured',
} as const;

const errorOf = (answer: { json: () => { error: { code: string; message: string } } }) => answer.json().error;

test('without a folder there is no backup, and it is said which setting names one', async () => {
  expect((await ask('GET', '/api/backup')).json()).toEqual({
    schemaVersion: 1,
    folder: null,
    last: null,
    trouble: null,
  });
  const refused = await ask('POST', '/api/backup', {});
  expect(refused.statusCode).toBe(400);
  expect(errorOf(refused)).toMatchObject({
    code: 'no-backup-folder',
    message: expect.stringContaining('backupFolder'),
  });
});

test('a backup is made, told, looked through; what is altered in it is found', async () => {
  expect((await ask('PATCH', '/api/settings', { backupFolder: at('backups') })).statusCode).toBe(200);
  const made = await ask('POST', '/api/backup', {});
  expect(made.statusCode).toBe(201);
  expect(made.json()).toMatchObject({ folder: at('backups'), pulls: 1, missingOriginals: [] });
  const state = (await ask('GET', '/api/backup')).json();
  const { takenAway, ...last } = made.json();
  expect(takenAway).toEqual([]);
  expect(state).toMatchObject({ folder: at('backups'), last, trouble: null });
  const check = () => ask('POST', '/api/backup/check', { folder: at('backups') });
  expect((await check()).json()).toMatchObject({ madeAt: made.json().madeAt, faults: [] });
  const copy = (await readdir(at('backups'))).find((name) => name.endsWith('.sqlite'))!;
  await appendFile(join(at('backups'), copy), 'x');
  expect((await check()).json().faults[0]).toContain('is not what was written');
});

test('backups are refused where they do not belong, and the last failure stands in the state', async () => {
  const inside = await ask('POST', '/api/backup', { to: join(at('book'), 'inside') });
  expect(inside.statusCode).toBe(409);
  expect(errorOf(inside).message).toContain('name another folder');
  expect((await ask('GET', '/api/backup')).json().trouble).toContain('inside');
  const nothing = await ask('POST', '/api/backup/check', { folder: at('web') });
  expect(nothing.statusCode).toBe(409);
  expect(errorOf(nothing)).toMatchObject({ code: 'missing' });
  for (const body of [{}, { folder: '' }, { folder: 7 }, { folder: at('backups'), more: 1 }])
    expect((await ask('POST', '/api/backup/check', body)).statusCode).toBe(400);
  expect((await ask('POST', '/api/backup', { to: at('second') })).statusCode).toBe(201);
  expect((await ask('GET', '/api/backup')).json().trouble).toBeNull();
});

test('another book is merged in while this one is served: dry first, then once', async () => {
  await cp(at('book'), at('copy'), { recursive: true });
  const copy = await openBook(at('copy'));
  const [pull] = (await copy.contents()).pulls;
  await copy.addPulls([
    { ...pull!, id: 'from-the-copy', name: 'From the copy', form: 'curve', summary: null, channels: [SPEED] },
  ]);
  await copy.close();
  const merge = (dryRun: boolean) => ask('POST', '/api/merge', { from: at('copy'), dryRun });
  const names = async () => (await book.pullNames()).map(({ name }) => name);
  expect((await merge(true)).json()).toMatchObject({ dryRun: true, added: { pull: 1 }, remarks: [] });
  expect(await names()).toEqual(['Remembered peak']);
  // Twice at the same time, as by a double press: it comes in once.
  const [one, other] = await Promise.all([merge(false), merge(false)]);
  expect([one.statusCode, other.statusCode]).toEqual([200, 200]);
  expect([one.json().added, other.json().added]).toContainEqual({ pull: 1 });
  expect([one.json().added, other.json().added]).toContainEqual({});
  expect(await names()).toEqual(['From the copy', 'Remembered peak']);
  expect((await readdir(at('book'))).filter((name) => name.endsWith('.part'))).toEqual([]);
});

test('a merge is refused with itself and of no book, and nothing is changed', async () => {
  const before = await book.contents();
  const itself = await ask('POST', '/api/merge', { from: at('book'), dryRun: false });
  expect(itself.statusCode).toBe(409);
  expect(errorOf(itself).message).toContain('is the book itself');
  const none = await ask('POST', '/api/merge', { from: at('web'), dryRun: false });
  expect(errorOf(none)).toMatchObject({ code: 'missing' });
  expect((await ask('POST', '/api/merge', { from: at('copy') })).statusCode).toBe(400);
  expect(await book.contents()).toEqual(before);
});

test('the export is for a named reader; another is refused', async () => {
  const [{ id } = { id: '' }] = await book.pullNames();
  await book.amendPull(id, { audience: { who: 'shop', notBefore: null } }, '');
  const everything = await ask('GET', '/api/export');
  const some = await ask('GET', '/api/export?for=everyone');
  for (const { headers } of [everything, some]) {
    expect(headers['content-type']).toBe('application/zip');
    expect(headers['content-disposition']).toContain('attachment');
  }
  // Names of the files in an archive stand in it as they are.
  expect(everything.body).toContain('from-the-copy');
  expect(some.body).not.toContain('from-the-copy');
  expect((await ask('GET', '/api/export?for=nobody')).statusCode).toBe(400);
});

test('what a rescue has to say is told until it is put away, and stays in the history', async () => {
  const told = (await ask('GET', '/api/rescue')).json();
  expect(told.report).toMatchObject({
    kept: { pulls: 0 },
    lost: [],
    damagedFolder: expect.stringContaining('damaged-'),
  });
  expect((await ask('POST', '/api/rescue/away')).json()).toEqual({ report: null });
  expect((await ask('GET', '/api/rescue')).json()).toEqual({ report: null });
  expect((await ask('POST', '/api/rescue/away')).statusCode).toBe(200);
  expect((await book.log()).map(({ act }) => act)).toContain('book rescued');
});
