import {
  airReport,
  type Book,
  bookReport,
  engineRows,
  settingsOf,
  weatherFromText,
} from '@pullbook/workshop';
import type { FastifyInstance } from 'fastify';
import { attachment } from '../attachment.ts';
import { airQuery, shaped } from '../bodies.ts';
import { RequestTrouble, valueOrTrouble } from '../trouble.ts';

/** The book as a whole: what it is, its engines, its original files; and the air. */
export function bookRoutes(app: FastifyInstance, book: Book): void {
  app.get('/api/book', async () => ({ ...(await bookReport(book)), folder: null }));

  app.get('/api/engines', () => engineRows(book));

  app.get<{ Params: { hash: string } }>('/api/originals/:hash', async (request, reply) => {
    const { hash } = request.params;
    const file = /^[0-9a-f]{64}$/.test(hash) ? await book.file(hash) : null;
    if (!file) throw new RequestTrouble(404, 'unknown-id', 'The book has no original file of this hash.');
    return reply
      .header('content-disposition', attachment(file.name))
      .type('application/octet-stream')
      .send(Buffer.from(await book.original(hash)));
  });

  app.get('/api/air', async (request) => {
    const reading = valueOrTrouble(weatherFromText(shaped(airQuery, request.query)));
    return valueOrTrouble(airReport(reading, await settingsOf(book)));
  });
}
