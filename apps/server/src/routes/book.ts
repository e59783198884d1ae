import { airReport, type Book, bookReport, exportFiles, weatherFromText, zipOf } from '@pullbook/workshop';
import type { FastifyInstance } from 'fastify';
import { attachment } from '../attachment.ts';
import { airQuery, shaped } from '../bodies.ts';
import { RequestTrouble, valueOrTrouble } from '../trouble.ts';

/** The book as a whole: what it is, its engines, its original files, its open export; and the air. */
export function bookRoutes(app: FastifyInstance, book: Book): void {
  app.get('/api/book', async () => ({ ...(await bookReport(book)), folder: null }));

  app.get('/api/engines', () => book.engines());

  app.get<{ Params: { hash: string } }>('/api/originals/:hash', async (request, reply) => {
    const { hash } = request.params;
    const file = /^[0-9a-f]{64}$/.test(hash) ? await book.file(hash) : null;
    if (!file) throw new RequestTrouble(404, 'unknown-id', 'The book has no original file of this hash.');
    return reply
      .header('content-disposition', attachment(file.name))
      .type('application/octet-stream')
      .send(Buffer.from(await book.original(hash)));
  });

  app.get('/api/export', async (_request, reply) => {
    const { name } = await book.info();
    return reply
      .header('content-disposition', attachment(`${name}.zip`))
      .type('application/zip')
      .send(Buffer.from(zipOf(await exportFiles(book))));
  });

  app.get('/api/air', async (request) => {
    const reading = valueOrTrouble(weatherFromText(shaped(airQuery, request.query)));
    return valueOrTrouble(airReport(reading));
  });
}
