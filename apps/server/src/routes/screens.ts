import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';

export interface ScreenFolders {
  /** The built screens. */
  web: string;
  fonts: string;
}

/**
 * The built screens and the fonts. Paths of the screens' own (no dot in them) get the start page. Looked up as they are
 * asked for, so that a new build shows without a restart.
 */
export async function screenRoutes(
  app: FastifyInstance,
  folders: ScreenFolders,
  settings: () => Promise<object>,
): Promise<void> {
  await app.register(fastifyStatic, {
    root: folders.web,
    serve: false,
    dotfiles: 'ignore',
    cacheControl: false,
  });
  // A built asset's name holds the hash of its content; the rest must be asked for anew.
  app.get<{ Params: { '*': string } }>('/assets/*', (request, reply) =>
    reply
      .header('cache-control', 'public, max-age=31536000, immutable')
      .sendFile(`assets/${request.params['*']}`),
  );
  app.get<{ Params: { file: string } }>('/:file(^[\\w-]+\\.\\w+$)', (request, reply) =>
    reply.header('cache-control', 'no-cache').sendFile(request.params.file),
  );
  app.get<{ Params: { file: string } }>('/fonts/:file(^[\\w-]+\\.ttf$)', (request, reply) =>
    reply.header('cache-control', 'no-cache').sendFile(request.params.file, folders.fonts),
  );
  app.get('/', (_request, reply) => startPage(folders, reply, settings));
  app.setNotFoundHandler((request, reply) =>
    isScreenPath(request) ? startPage(folders, reply, settings) : notThere(request, reply),
  );
}

/** Where the settings stand in the start page, so that the first picture has its theme and units already. */
const SETTINGS_PLACE = '<meta name="shop-settings" content="" />';

async function startPage(
  folders: ScreenFolders,
  reply: FastifyReply,
  settings: () => Promise<object>,
): Promise<FastifyReply> {
  const page = await readFile(join(folders.web, 'index.html'), 'utf8').catch(() => null);
  if (page !== null) {
    const content = attributeText(JSON.stringify(await settings()));
    const filled = page.replace(SETTINGS_PLACE, () => SETTINGS_PLACE.replace('""', () => `"${content}"`));
    return reply.header('cache-control', 'no-cache').type('text/html; charset=utf-8').send(filled);
  }
  return reply
    .type('text/plain; charset=utf-8')
    .status(503)
    .send(
      'The screens are not built yet. Run "npm run build" in the folder of Pullbook, then reload this page.\n',
    );
}

const attributeText = (text: string): string =>
  text.replace(/&/g, '&amp;').replace(/"/g, '&quot;').replace(/</g, '&lt;');

function isScreenPath(request: FastifyRequest): boolean {
  const path = request.url.split('?')[0] ?? '';
  return request.method === 'GET' && /^\/[\w/-]*$/.test(path) && !/^\/(api|fonts|assets)(\/|$)/.test(path);
}

function notThere(request: FastifyRequest, reply: FastifyReply): FastifyReply {
  const message = `There is nothing at ${request.method} ${request.url.split('?')[0]}.`;
  return reply
    .header('cache-control', 'no-store')
    .status(404)
    .send({ error: { code: 'not-found', message } });
}
