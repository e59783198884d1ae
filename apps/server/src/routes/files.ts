import {
  type Book,
  importFile,
  pullDetailsFromText,
  readFileForImport,
  shownRemarks,
} from '@pullbook/workshop';
import type { FastifyInstance } from 'fastify';
import { importDetails, shaped } from '../bodies.ts';
import { valueOrTrouble } from '../trouble.ts';
import { uploadFrom } from '../upload.ts';

/** Files: reading one for a preview, putting one into the book. */
export function fileRoutes(app: FastifyInstance, book: Book): void {
  app.post('/api/files/read', async (request) => {
    const { name, bytes } = await uploadFrom(request);
    return valueOrTrouble(await readFileForImport(book, bytes, name));
  });

  app.post('/api/files/import', async (request, reply) => {
    const { name, bytes, details } = await uploadFrom(request);
    const { mapping, ...text } = shaped(importDetails, details);
    const written = valueOrTrouble(pullDetailsFromText(text, new Date().toISOString()));
    const report = valueOrTrouble(await importFile(book, { name, bytes, mapping, details: written }));
    return reply
      .status(report.alreadyKnown ? 200 : 201)
      .send({ ...report, remarks: shownRemarks(report.remarks) });
  });
}
