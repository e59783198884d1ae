import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Book, makeDemoBook, openBook } from '@pullbook/workshop';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll } from 'vitest';
import { buildApp } from '../app.ts';

const PORT = 4680;

/** Serves one book to the tests of a file, a demo book or an empty one, and gives what asks it as its own page does, and the book. */
export function servedBook(kind: 'demo' | 'empty') {
  let folder = '';
  let book: Book;
  let app: FastifyInstance;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'pullbook-server-'));
    const at = join(folder, 'book');
    if (kind === 'demo') await makeDemoBook(at);
    book = await openBook(at, { create: kind === 'demo' ? null : { name: 'Shop' } });
    const web = join(folder, 'web');
    await mkdir(web);
    await writeFile(join(web, 'index.html'), '<!doctype html><meta name="shop-settings" content="" />');
    app = await buildApp({ book, folders: { web, fonts: web }, port: () => PORT });
  }, 60_000);
  afterAll(async () => {
    await app.close();
    await book.close();
    await rm(folder, { recursive: true, force: true });
  });
  const ask = async (method: 'GET' | 'POST' | 'PATCH' | 'PUT', url: string, payload?: object) => {
    const host = `127.0.0.1:${PORT}`;
    const headers = { host, origin: `http://${host}` };
    return app.inject({ method, url, headers, ...(payload === undefined ? {} : { payload }) });
  };
  return { ask, book: () => book };
}
