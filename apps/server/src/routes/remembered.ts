import { type Book, forgetLayout, layoutRows, likeReport, writtenReport } from '@pullbook/workshop';
import type { FastifyInstance } from 'fastify';
import { lookingFrom } from '../looking.ts';
import { valueOrTrouble } from '../trouble.ts';

/** What the book remembers, for forms: kinds of file as confirmed, what a pull is like, what is written of it. */
export function rememberedRoutes(app: FastifyInstance, book: Book): void {
  app.get('/api/layouts', () => layoutRows(book));

  app.delete<{ Params: { fingerprint: string } }>('/api/layouts/:fingerprint', async (request) =>
    valueOrTrouble(await forgetLayout(book, request.params.fingerprint)),
  );

  app.get<{ Params: { id: string } }>('/api/like/:id', async (request) => {
    const { view } = lookingFrom(request.query);
    const { id } = request.params;
    // A book without a pull has none to be like; that is no trouble.
    if (id === 'last' && (await book.newestPull()) === null) return { report: null };
    return { report: valueOrTrouble(await likeReport(book, id, view, new Date().toISOString())) };
  });

  app.get<{ Params: { id: string } }>('/api/pulls/:id/written', async (request) => {
    const { units } = lookingFrom(request.query).view;
    return valueOrTrouble(await writtenReport(book, request.params.id, units));
  });
}
