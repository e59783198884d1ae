import { mkdir, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Book, openBook } from '@pullbook/workshop';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildApp } from './app.ts';
import { PortTaken, startServer } from './start-server.ts';

const PORT = 4680;
const HOST = `127.0.0.1:${PORT}`;
const OWN = { host: HOST, origin: `http://${HOST}` };
const UPLOAD_LIMIT_BYTES = 200_000;

/** An invented step test: torque falls by a straight line. */
const curve = (fallNm: number): string => {
  const rows = Array.from({ length: 26 }, (_, row) => 2000 + 150 * row);
  return `rpm,torque_Nm\n${rows.map((rpm) => `${rpm},${(420 - fallNm * (rpm / 1000)).toFixed(1)}`).join('\n')}\n`;
};

let folder = '';
let book: Book;
let app: FastifyInstance;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-server-'));
  const web = join(folder, 'web');
  await mkdir(join(web, 'assets'), { recursive: true });
  await writeFile(join(web, 'index.html'), '<!doctype html><title>screens</title>');
  await writeFile(join(web, 'assets', 'app-1a2b.js'), 'export {};');
  await mkdir(join(folder, 'fonts'));
  await writeFile(join(folder, 'fonts', 'Some.ttf'), 'font');
  await writeFile(join(folder, 'fonts', 'LICENCE.txt'), 'licence');
  await writeFile(join(folder, 'secret.txt'), 'secret');
  book = await openBook(join(folder, 'book'), { create: { name: 'Test book' } });
  app = await buildApp({
    book,
    folders: { web, fonts: join(folder, 'fonts') },
    port: () => PORT,
    uploadLimitBytes: UPLOAD_LIMIT_BYTES,
  });
});

afterAll(async () => {
  await app.close();
  await book.close();
  await rm(folder, { recursive: true, force: true });
});

const get = (url: string, headers: Record<string, string> = { host: HOST }) =>
  app.inject({ method: 'GET', url, headers });

const send = (
  method: 'POST' | 'PATCH',
  url: string,
  payload: object,
  headers: Record<string, string> = OWN,
) => app.inject({ method, url, headers, payload });

async function upload(url: string, name: string, content: string, details?: object) {
  const form = new FormData();
  form.append('file', new Blob([content]), name);
  if (details) form.append('details', JSON.stringify(details));
  const request = new Request('http://unused', { method: 'POST', body: form });
  return app.inject({
    method: 'POST',
    url,
    headers: { ...OWN, 'content-type': request.headers.get('content-type')! },
    payload: Buffer.from(await request.arrayBuffer()),
  });
}

describe('who may ask', () => {
  test.each([HOST, `localhost:${PORT}`, `[::1]:${PORT}`])('%s is this machine', async (host) => {
    expect((await get('/api/book', { host })).statusCode).toBe(200);
  });

  test.each(['evil.example:4680', '127.0.0.1:9', '127.0.0.1', 'localhost.evil.example:4680', ''])(
    'host "%s" is refused',
    async (host) => {
      const answer = await get('/api/book', { host });
      expect(answer.statusCode).toBe(403);
      expect(answer.json().error.code).toBe('foreign-host');
    },
  );

  test.each(['http://evil.example', 'null', `http://127.0.0.1:9`, `https://${HOST}`])(
    'a change from origin %s is refused',
    async (origin) => {
      const answer = await send('POST', '/api/trials', {}, { host: HOST, origin });
      expect(answer.json().error.code).toBe('foreign-origin');
    },
  );

  test('a change without an origin is refused', async () => {
    const answer = await send('PATCH', '/api/pulls/x', {}, { host: HOST });
    expect(answer.statusCode).toBe(403);
  });
});

describe('what leaves', () => {
  test.each(['/', '/trials/123', '/api/book', '/nothing.here'])(
    '%s carries the guarding headers',
    async (url) => {
      const { headers } = await get(url);
      const policy = String(headers['content-security-policy']);
      expect(policy).toContain("default-src 'self'");
      expect(policy).toContain("frame-ancestors 'none'");
      expect(policy).not.toMatch(/script-src[^;]*unsafe/);
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['access-control-allow-origin']).toBeUndefined();
    },
  );

  test.each(['/', '/trials', '/trials/0123-abc'])('%s is a screen', async (url) => {
    expect((await get(url)).body).toContain('<title>screens</title>');
  });

  test('assets and fonts are served, other files of the font folder are not', async () => {
    expect((await get('/assets/app-1a2b.js')).headers['cache-control']).toContain('immutable');
    expect((await get('/')).headers['cache-control']).toBe('no-cache');
    expect((await get('/fonts/Some.ttf')).body).toBe('font');
    expect((await get('/fonts/LICENCE.txt')).statusCode).toBe(404);
    const gone = await get('/assets/app-old.js');
    expect(gone.statusCode).toBe(404);
    expect(gone.headers['cache-control']).not.toContain('immutable');
  });

  test.each([
    '/../secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e/secret.txt',
    '/%2e%2e%2fsecret.txt',
    '/assets/..%2f..%2fsecret.txt',
    '/fonts/..%2fsecret.txt',
    '/fonts/%2e%2e/%2e%2e/secret.txt',
    '/..%5csecret.txt',
    '/%00',
    '/api/originals/..%2f..%2fsecret.txt',
    '/api/originals/%2e%2e',
  ])('%s leads nowhere', async (url) => {
    const answer = await get(url);
    expect(answer.body).not.toBe('secret');
    expect(answer.statusCode).toBeGreaterThanOrEqual(400);
  });

  test('an unknown address of the API is 404 in JSON', async () => {
    const answer = await get('/api/nothing');
    expect(answer.statusCode).toBe(404);
    expect(answer.json().error.message).toContain('/api/nothing');
  });
});

describe('wrong requests', () => {
  test('JSON that is none', async () => {
    const answer = await app.inject({
      method: 'POST',
      url: '/api/trials',
      headers: { ...OWN, 'content-type': 'application/json' },
      payload: '{"question": ',
    });
    expect(answer.statusCode).toBe(400);
    expect(answer.json().error.code).toBe('bad-request');
  });

  test('a body names every field that is wrong', async () => {
    const answer = await send('POST', '/api/trials', { question: 7, combinations: 'A' });
    expect(answer.statusCode).toBe(400);
    expect(answer.json().error.message).toMatch(/question: .*combinations: /s);
  });

  test.each([
    'units=furlongs',
    'decimal=x',
    'from=abc&to=2',
    'from=3000',
    'from=5000&to=4000',
    'correction=sae',
  ])('a query with %s', async (query) => expect((await get(`/api/trials/x?${query}`)).statusCode).toBe(400));

  test('an unknown trial is 404', async () => {
    const answer = await get('/api/trials/none');
    expect(answer.statusCode).toBe(404);
    expect(answer.json().error.code).toBe('unknown-id');
  });

  test('a file above the limit is 413, with what is allowed', async () => {
    const answer = await upload('/api/files/read', 'big.csv', 'x'.repeat(UPLOAD_LIMIT_BYTES + 1));
    expect(answer.statusCode).toBe(413);
    expect(answer.json().error.message).toContain('Allowed');
  });

  test('an upload that is none', async () => {
    expect((await send('POST', '/api/files/read', {})).statusCode).toBe(415);
  });

  test.each([
    ['empty.csv', ''],
    ['picture.csv', '\u0089PNG\r\n\u001a\n\u0000\u0000\u0000'],
    ['one.csv', 'rpm,torque_Nm\n3000,400\n'],
  ])('%s is refused and nothing is stored', async (name, content) => {
    const answer = await upload('/api/files/import', name, content);
    expect(answer.statusCode).toBe(400);
    expect(answer.json().error.remarks.length).toBeGreaterThan(0);
    expect(await book.pullHeads()).toEqual([]);
    expect(await book.files()).toEqual([]);
  });
});

describe('the job over HTTP', () => {
  let combinations: string[] = [];
  let pulls: string[] = [];

  test('two combinations', async () => {
    const add = (name: string) =>
      send('POST', '/api/combinations', {
        sheetText: `schemaVersion: 1\nname: ${name}\nshortBlock:\n  bore: 96 mm\n  stroke: 88 mm\n  cylinders: 6\n`,
        engineName: 'Test six',
      });
    const answers = [await add('Base cam'), await add('Longer cam')];
    expect(answers.map((one) => one.statusCode)).toEqual([201, 201]);
    combinations = answers.map((one) => one.json().id);
    const wrong = await send('POST', '/api/combinations', {
      sheetText: 'name: X\nshortBlock:\n  bore: 96 kg\n',
    });
    expect(wrong.json().error.message).toContain('bore');
    expect((await get('/api/engines')).json()).toHaveLength(1);
    const declared = await send('POST', '/api/packages', {
      name: 'Blower',
      covers: ['supercharger', 'drive'],
    });
    expect(declared.statusCode).toBe(201);
    expect((await get('/api/packages')).json()).toMatchObject([{ id: declared.json().id, name: 'Blower' }]);
    const strange = await send('POST', '/api/packages', { name: 'Other', covers: ['wheels'] });
    expect(strange.statusCode).toBe(400);
    expect(strange.json().error.message).toContain('wheels');
  });

  test('a sheet is looked at and not kept: its faults at their lines, what it changes of another', async () => {
    const before = (await get('/api/combinations')).json().length;
    const look = async (sheetText: string) =>
      (await send('POST', '/api/sheets/look', { sheetText, madeFromId: combinations[0] })).json();
    const faulty = await look('schemaVersion: 1\nname: X\nshortBlock:\n  bore: 96\n');
    expect(faulty).toMatchObject({ complete: false, changes: null, plain: { shortBlock: { bore: 96 } } });
    expect(faulty.remarks[0]).toMatchObject({ place: 'shortBlock.bore', line: 4, level: 'refusal' });
    const sheet = {
      schemaVersion: 1,
      name: 'X',
      shortBlock: { bore: '97 mm', stroke: '88 mm', cylinders: '6' },
    };
    const good = await look(JSON.stringify(sheet));
    expect(good).toMatchObject({
      complete: true,
      plain: sheet,
      changes: [{ field: 'bore', after: '97 mm' }],
    });
    expect(good.sheetText).toContain('bore: 97 mm');
    expect(await look('a: [')).toMatchObject({ complete: false, plain: null, sheetText: null });
    expect(await look('schemaVersion: 1\nname: X\ncam: road\n')).toMatchObject({ plain: null });
    expect((await get('/api/combinations')).json()).toHaveLength(before);
    const words = (await get('/api/sheet-words')).json();
    expect(words.sections[0].fields.map((one: { field: string }) => one.field)).toContain('bore');
  });

  test('two files, read and put in', async () => {
    const read = (await upload('/api/files/read', 'a.csv', curve(20))).json();
    expect(read).toMatchObject({ fileName: 'a.csv', known: null, rowCount: 26 });
    expect(read.columns.map((one: { guess: { meaning: string } }) => one.guess.meaning)).toEqual([
      'engineSpeed',
      'torque',
    ]);
    expect(read.meanings.find((one: { id: string }) => one.id === 'torque').units).toContain('lb-ft');
    const weather = { pressure: '98.2 kPa', temperature: '30 C', humidity: '45 %', altitude: null };
    const put = async (name: string, fallNm: number, combinationId: string) =>
      upload('/api/files/import', name, curve(fallNm), {
        combinationId,
        weather,
        carried: { standard: 'observed' },
      });
    const answers = [await put('a.csv', 20, combinations[0]!), await put('b.csv', 19, combinations[1]!)];
    expect(answers.map((one) => one.statusCode)).toEqual([201, 201]);
    pulls = answers.map((one) => one.json().pulls[0].id);
    const again = await put('copy of a.csv', 20, combinations[0]!);
    expect(again.statusCode).toBe(200);
    expect(again.json()).toMatchObject({ alreadyKnown: true, pulls: [{ id: pulls[0] }] });
    expect((await get('/api/pulls')).json()).toMatchObject({ total: 2, all: 2, page: 1, pages: 1 });
  });

  test('a trial over them answers, changes, and is published', async () => {
    const started = await send('POST', '/api/trials', {
      question: 'What does the cam add?',
      kind: 'comparison',
      combinations: combinations.map((combinationId, index) => ({
        combinationId,
        shortName: `cam ${index}`,
      })),
      correction: 'sae-j1349',
    });
    const { id } = started.json();
    const page = (await get(`/api/trials/${id}?units=si`)).json();
    expect(page.evidence).toHaveLength(2);
    expect(page.chart.panels[0].unit).toBe('kW');
    const observed = (await get(`/api/trials/${id}?correction=observed&from=3000&to=5000`)).json();
    expect(observed.settings).toMatchObject({ correction: 'observed', averagesWindowRpm: [3000, 5000] });
    expect((await book.trial(id))!.correction).toBe('sae-j1349');
    const rejected = await send('PATCH', `/api/trials/${id}`, {
      pulls: [{ pullId: pulls[1], role: 'rejected' }],
    });
    expect(rejected.json().error.code).toBe('no-reason');
    await send('PATCH', `/api/trials/${id}`, { remark: 'On the small pulley.', reason: '' });
    expect((await book.trial(id))!.remark).toBe('On the small pulley.');
    await send('PATCH', `/api/trials/${id}`, { takenApart: { B: false }, reason: 'on the brake' });
    expect((await get(`/api/trials/${id}`)).json().combinations).toMatchObject([
      { key: 'A', takenApart: null },
      { key: 'B', takenApart: false },
    ]);
    const still = await get(`/api/trials/${id}/still?format=png&size=1080p&theme=dark&download=1`);
    expect(still.headers['content-type']).toBe('image/png');
    expect(still.headers['content-disposition']).toContain('what-does-the-cam-add-answer-1920x1080-dark.png');
    expect(still.rawPayload.subarray(1, 4).toString()).toBe('PNG');
    expect((await get('/api/trials')).json().rows).toHaveLength(1);
  });

  test('a pull is amended and a remembered peak is entered', async () => {
    const amended = await send('PATCH', `/api/pulls/${pulls[0]}`, {
      amendment: { name: 'First' },
      reason: 'named',
    });
    expect(amended.statusCode).toBe(200);
    expect((await get(`/api/pulls/${pulls[0]}`)).json().name).toBe('First');
    const peak = await send('POST', '/api/pulls', {
      summary: { peakPower: '328 hp', peakPowerRpm: '6400 rpm' },
      name: 'Before the rebuild',
      combinationId: combinations[0],
      origin: 'remembered',
      carried: { standard: 'unknown' },
    });
    expect(peak.statusCode).toBe(201);
    // 328 hp of 550 ft·lbf/s: 745.699 871 582 W each (NIST SP 811, appendix B.8).
    expect(peak.json().peakPowerKw).toBeCloseTo(328 * 0.745_699_871_582, 6);
    const page = (await get(`/api/combinations/${combinations[0]}`)).json();
    expect(page.pulls).toHaveLength(2);
  });

  test('how a pull is read is amended, and told with the page; a wrong one is refused with every field', async () => {
    const id = pulls[0]!;
    const amended = await send('PATCH', `/api/pulls/${id}`, {
      amendment: {
        treatment: { windowRpm: [2500, 4000], lagsS: {}, binWidthRpm: null, addInertia: false },
        events: [{ engineSpeed: '3000 rpm', text: 'a pop' }],
      },
      reason: 'the start was ragged',
    });
    expect(amended.statusCode).toBe(200);
    const page = (await get(`/api/pulls/${id}`)).json();
    expect(page.treatment).toEqual({
      lagsS: {},
      windowRpm: [2500, 4000],
      binWidthRpm: null,
      addInertia: false,
    });
    expect(page.basis).toContain('window set by hand');
    expect(page.events).toEqual(['3,000\u00a0rpm: a pop']);
    const wrong = await send('PATCH', `/api/pulls/${id}`, {
      amendment: { treatment: { windowRpm: [4000, 2500], lagsS: { lambda: 9 }, binWidthRpm: 3 } },
      reason: 'x',
    });
    expect(wrong.statusCode).toBe(400);
    expect(wrong.json().error.remarks).toHaveLength(3);
    const misshapen = await send('PATCH', `/api/pulls/${id}`, {
      amendment: { treatment: { windowRpm: 'all' } },
      reason: 'x',
    });
    expect(misshapen.statusCode).toBe(400);
    await send('PATCH', `/api/pulls/${id}`, {
      amendment: { treatment: { windowRpm: null } },
      reason: 'back',
    });
    expect((await book.pull(id))!.treatment.windowRpm).toBeNull();
  });

  test('a recording over speed, a part of it, and channels that are not there', async () => {
    const id = pulls[0]!;
    const over = async (query: string) => get(`/api/pulls/${id}/recorded?${query}`);
    const all = (await over('over=speed')).json();
    expect(all.chart.xRange).toEqual([2000, 5750]);
    expect(all.chart.panels).toHaveLength(1);
    expect(all.cursor.at).toHaveLength(26);
    const part = (await over('over=speed&low=3000&high=4000')).json();
    expect(part.cursor.at).toEqual([3050, 3200, 3350, 3500, 3650, 3800, 3950]);
    const strange = await over('channels=99');
    expect(strange.statusCode).toBe(400);
    expect(strange.json().error.message).toContain('"99"');
    expect((await get('/api/pulls/no-such-pull/recorded')).statusCode).toBe(404);
  });

  test('two windows: the later is told what came and may still mean it; an undo takes it back', async () => {
    const path = `/api/pulls/${pulls[0]}`;
    const { stamp } = (await get(path)).json();
    const amend = (operator: string, looked: string) =>
      send('PATCH', path, { amendment: { operator }, reason: `it was ${operator}`, stamp: looked });
    expect((await amend('early', stamp)).statusCode).toBe(200);
    const late = await amend('late', stamp);
    expect(late.statusCode).toBe(409);
    const { error } = late.json();
    expect(error).toMatchObject({
      code: 'changed meanwhile',
      since: [
        {
          reason: 'it was early',
          changes: [{ label: 'Operator', before: '', after: 'early' }],
          thing: { kind: 'pull', id: pulls[0] },
        },
      ],
    });
    expect((await amend('late', error.stamp)).statusCode).toBe(200);
    const { step } = (await get('/api/history/last')).json();
    expect(step).toMatchObject({ reason: 'it was late', canUndo: true });
    const undone = await send('POST', '/api/undo', { uid: step.uid });
    expect(undone.json()).toMatchObject({ isUndoing: true, changes: [{ before: 'late', after: 'early' }] });
    expect((await get('/api/history?before=4')).json().steps.length).toBeGreaterThan(0);
    const twice = await send('POST', '/api/undo', { uid: step.uid });
    expect(twice.statusCode).toBe(409);
    expect(twice.json().error.message).toContain('undone already');
    expect((await send('POST', '/api/undo', { uid: 'none/1' })).statusCode).toBe(409);
    expect((await send('POST', '/api/undo', { uid: null })).statusCode).toBe(200);
  });

  test('pulls are narrowed by what stands in the address; nonsense is refused in words', async () => {
    const found = async (query: string) => (await get(`/api/pulls?${query}`)).json();
    const madeWith = async (query: string) => {
      const rows: { combinationId: string }[] = (await found(query)).rows;
      return new Set(rows.map(({ combinationId }) => combinationId));
    };
    expect(await madeWith(`combination=${combinations[0]}`)).toEqual(new Set([combinations[0]]));
    const both = `combination=${combinations[0]}&combination=${combinations[1]}`;
    expect(await madeWith(both)).toEqual(new Set(combinations.slice(0, 2)));
    expect((await found('boosted=unknown')).total).toBe(0);
    expect((await found(`id=${pulls[0]}&units=si`)).rows).toMatchObject([{ id: pulls[0] }]);
    expect((await found('fromDay=soon')).error.code).toBe('day-not-read');
    expect((await get('/api/pulls?size=501')).statusCode).toBe(400);
  });

  test('an engine is changed with a reason', async () => {
    const [{ id }] = (await get('/api/engines')).json();
    const sent = (body: object) => send('PATCH', `/api/engines/${id}`, body);
    expect((await sent({ buildRevision: '7', reason: '' })).statusCode).toBe(400);
    expect((await sent({ buildRevision: '7', reason: 'new rings' })).statusCode).toBe(200);
    expect((await get('/api/engines')).json()).toMatchObject([{ buildRevision: '7' }]);
  });

  test('original bytes and the open export leave as attachments', async () => {
    const { fileHash } = (await book.pull(pulls[0]!))!;
    const original = await get(`/api/originals/${fileHash}`);
    expect(original.body).toBe(curve(20));
    expect(original.headers['content-disposition']).toMatch(/^attachment;/);
    const archive = await get('/api/export');
    expect(archive.headers['content-type']).toBe('application/zip');
    expect(archive.rawPayload.subarray(0, 4).toString('latin1')).toBe('PK\u0003\u0004');
    expect((await get('/api/originals/0000')).statusCode).toBe(404);
  });

  test('the air', async () => {
    const air = (await get('/api/air?pressure=98.2kPa&temperature=30C&humidity=45%25&altitude=300m')).json();
    expect(air.corrections.map((one: { standard: string }) => one.standard)).toEqual([
      'sae-j1349',
      'sae-j607',
      'iso-1585',
      'din-70020',
    ]);
    expect((await get('/api/air?pressure=98.2&temperature=30C')).statusCode).toBe(400);
  });
});

describe('on a real socket', () => {
  test('listens on loopback only, refuses a foreign host, stops cleanly, and says a taken port', async () => {
    const server = await startServer({ book, port: 0 });
    expect(server.address).toBe(`http://127.0.0.1:${server.port}`);
    const answer = await fetch(`${server.address}/api/book`);
    expect(await answer.json()).toMatchObject({ name: 'Test book', folder: null });
    const raw = await rawRequest(server.port, 'GET /../../../../etc/hostname HTTP/1.1\r\nHost: evil.example');
    expect(raw).toMatch(/^HTTP\/1\.1 403/);
    const climbing = await rawRequest(
      server.port,
      `GET /../../../../etc/hostname HTTP/1.1\r\nHost: 127.0.0.1:${server.port}`,
    );
    expect(climbing).toMatch(/^HTTP\/1\.1 40[034]/);
    await expect(startServer({ book, port: server.port })).rejects.toBeInstanceOf(PortTaken);
    await server.close();
    await expect(fetch(`${server.address}/api/book`)).rejects.toThrow();
    expect((await readdir(join(folder, 'book'))).includes('book.sqlite')).toBe(true);
  });
});

function rawRequest(port: number, head: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(port, '127.0.0.1', () => socket.write(`${head}\r\nConnection: close\r\n\r\n`));
    let answer = '';
    socket.on('data', (bytes) => {
      answer += bytes.toString('latin1');
    });
    socket.on('end', () => resolve(answer));
    socket.on('error', reject);
  });
}
