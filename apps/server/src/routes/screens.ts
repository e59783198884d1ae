import { existsSync } from 'node:fs';
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
export async function screenRoutes(app: FastifyInstance, folders: ScreenFolders): Promise<void> {
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
  app.get('/', (_request, reply) => startPage(folders, reply));
  app.setNotFoundHandler((request, reply) =>
    isScreenPath(request) ? startPage(folders, reply) : notThere(request, reply),
  );
}

function startPage(folders: ScreenFolders, reply: FastifyReply): FastifyReply {
  if (existsSync(join(folders.web, 'index.html'))) {
    return reply.header('cache-control', 'no-cache').sendFile('index.html');
  }
  return reply
    .type('text/plain; charset=utf-8')
    .status(503)
    .send(
      'The screens are not built yet. Run "npm run build" in the folder of Pullbook, then reload this page.\n',
    );
}

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
