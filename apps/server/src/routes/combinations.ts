import {
  addCombinationFromText,
  addPackage,
  amendCombination,
  type Book,
  combinationPageOf,
  combinationRows,
  lookAtSheet,
  settingsOf,
  sheetWords,
  shownRemarks,
} from '@pullbook/workshop';
import type { FastifyInstance } from 'fastify';
import { combinationAmendment, newCombination, newPackage, shaped, sheetToLookAt } from '../bodies.ts';
import { lookingFrom } from '../looking.ts';
import { valueOrTrouble } from '../trouble.ts';

type WithId = { Params: { id: string } };

/** Combinations: rows, one page, a new one, an amendment; and the packages that may be fitted. */
export function combinationRoutes(app: FastifyInstance, book: Book): void {
  app.get('/api/combinations', () => combinationRows(book));

  app.get<WithId>('/api/combinations/:id', async (request) =>
    valueOrTrouble(await combinationPageOf(book, request.params.id, lookingFrom(request.query).view)),
  );

  app.post('/api/combinations', async (request, reply) => {
    const added = await addCombinationFromText(book, shaped(newCombination, request.body));
    const remarks = shownRemarks(added.remarks, await settingsOf(book));
    return reply.status(201).send({ ...valueOrTrouble(added), remarks });
  });

  app.get('/api/sheet-words', () => sheetWords());

  app.post('/api/sheets/look', async (request) => {
    const { sheetText, madeFromId } = shaped(sheetToLookAt, request.body);
    return valueOrTrouble(await lookAtSheet(book, sheetText, await settingsOf(book), madeFromId));
  });

  app.get('/api/packages', () => book.packages());

  app.post('/api/packages', async (request, reply) => {
    const { name, covers } = shaped(newPackage, request.body);
    return reply.status(201).send(valueOrTrouble(await addPackage(book, name, covers)));
  });

  app.patch<WithId>('/api/combinations/:id', async (request) => {
    const { sheetText, reason, stamp } = shaped(combinationAmendment, request.body);
    return valueOrTrouble(
      await amendCombination(book, request.params.id, sheetText, reason, undefined, stamp),
    );
  });
}
