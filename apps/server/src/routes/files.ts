import { remarksBeside } from '@pullbook/core/rule';
import { findingGroups } from '@pullbook/views';
import {
  type Book,
  type FileToImport,
  type ImportReport,
  importFile,
  previewImport,
  pullDetailsFromText,
  readFileForImport,
  settingsOf,
  shownRemarks,
} from '@pullbook/workshop';
import type { FastifyInstance } from 'fastify';
import { importDetails, shaped } from '../bodies.ts';
import { valueOrTrouble } from '../trouble.ts';
import { incomingFolder, type Upload, withUpload } from '../upload.ts';

/** Files: reading one for a preview, putting one into the book. */
export async function fileRoutes(app: FastifyInstance, book: Book): Promise<void> {
  const incoming = await incomingFolder(book.folder);
  const shown = async (report: ImportReport) => {
    const view = await settingsOf(book);
    const names = new Map(report.pulls.map(({ id, name }) => [`pull ${id}`, name] as const));
    return {
      ...report,
      findings: findingGroups(report.findings, report.pulls.length > 1 ? names : new Map(), view),
      remarks: shownRemarks(remarksBeside(report.remarks, report.findings), view),
    };
  };

  app.post('/api/files/read', async (request) => {
    return withUpload(request, incoming, async ({ name, path }) =>
      valueOrTrouble(await readFileForImport(book, { name, path }, await settingsOf(book))),
    );
  });

  // As it would go in, with what is written down about it so far: what the rules say of it before it is kept.
  app.post('/api/files/check', async (request) =>
    shown(
      await withUpload(request, incoming, async (upload) =>
        valueOrTrouble(await previewImport(book, fileOf(upload))),
      ),
    ),
  );

  app.post('/api/files/import', async (request, reply) => {
    const report = await withUpload(request, incoming, async (upload) =>
      valueOrTrouble(await importFile(book, fileOf(upload))),
    );
    return reply.status(report.alreadyKnown ? 200 : 201).send(await shown(report));
  });
}

/** An uploaded file with what is said about it. */
function fileOf({ name, path, details }: Upload): FileToImport {
  const { mapping, like, readAnew, ...text } = shaped(importDetails, details);
  const written = valueOrTrouble(pullDetailsFromText(text, new Date().toISOString()));
  return { name, path, mapping, like, readAnew, details: written };
}
