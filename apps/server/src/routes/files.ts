import {
  type Book,
  importFile,
  pullDetailsFromText,
  readFileForImport,
  settingsOf,
  shownRemarks,
} from '@pullbook/workshop';
import type { FastifyInstance } from 'fastify';
import { importDetails, shaped } from '../bodies.ts';
import { valueOrTrouble } from '../trouble.ts';
import { incomingFolder, withUpload } from '../upload.ts';

/** Files: reading one for a preview, putting one into the book. */
export async function fileRoutes(app: FastifyInstance, book: Book): Promise<void> {
  const incoming = await incomingFolder(book.folder);

  app.post('/api/files/read', async (request) => {
    return withUpload(request, incoming, async ({ name, path }) =>
      valueOrTrouble(await readFileForImport(book, { name, path }, await settingsOf(book))),
    );
  });

  app.post('/api/files/import', async (request, reply) => {
    const report = await withUpload(request, incoming, async ({ name, path, details }) => {
      const { mapping, like, readAnew, ...text } = shaped(importDetails, details);
      const written = valueOrTrouble(pullDetailsFromText(text, new Date().toISOString()));
      return valueOrTrouble(
        await importFile(book, { name, path, mapping, like, readAnew, details: written }),
      );
    });
    return reply
      .status(report.alreadyKnown ? 200 : 201)
      .send({ ...report, remarks: shownRemarks(report.remarks, await settingsOf(book)) });
  });
}
