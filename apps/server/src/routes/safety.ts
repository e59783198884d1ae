import { Readable } from 'node:stream';
import {
  type Book,
  backUp,
  backupState,
  checkBackupFolder,
  mergeIntoBook,
  putRescueAway,
  rescueToTell,
  settingsOf,
  shownRemarks,
  zippedExport,
} from '@pullbook/workshop';
import type { FastifyInstance } from 'fastify';
import { attachment } from '../attachment.ts';
import { shaped } from '../bodies.ts';
import { backupWanted, exportQuery, folderToCheck, mergeWanted } from '../safety-bodies.ts';
import { valueOrTrouble } from '../trouble.ts';

/** That nothing is lost: the open export, backups, another book merged in, what a rescue has to say. */
export function safetyRoutes(app: FastifyInstance, book: Book): void {
  app.get('/api/export', async (request, reply) => {
    const { for: reader } = shaped(exportQuery, request.query);
    const { fileName, pieces } = valueOrTrouble(await zippedExport(book, reader));
    return reply
      .header('content-disposition', attachment(fileName))
      .type('application/zip')
      .send(Readable.from(pieces));
  });

  app.get('/api/backup', () => backupState(book));

  app.post('/api/backup', async (request, reply) => {
    const { to, keepAll } = shaped(backupWanted, request.body ?? {});
    return reply.status(201).send(valueOrTrouble(await backUp(book, to ?? null, new Date(), { keepAll })));
  });

  app.post('/api/backup/check', (request) => {
    const { folder, at } = shaped(folderToCheck, request.body);
    return checkBackupFolder(folder, at ?? null);
  });

  app.post('/api/merge', async (request) => {
    const { from, dryRun } = shaped(mergeWanted, request.body);
    const merged = await mergeIntoBook(book, from, { dryRun });
    return { ...valueOrTrouble(merged), remarks: shownRemarks(merged.remarks, await settingsOf(book)) };
  });

  app.get('/api/rescue', async () => ({ report: await rescueToTell(book) }));

  app.post('/api/rescue/away', async () => {
    await putRescueAway(book);
    return { report: null };
  });
}
