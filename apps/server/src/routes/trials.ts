import {
  type Book,
  correctionByName,
  editTrial,
  startTrial,
  trialCards,
  trialPageOf,
} from '@pullbook/workshop';
import type { FastifyInstance } from 'fastify';
import { newTrial, shaped, trialEdit, trialPageQuery, trialsQuery } from '../bodies.ts';
import { lookingFrom } from '../looking.ts';
import { valueOrTrouble } from '../trouble.ts';

type WithId = { Params: { id: string } };

/** Trials: cards, one page, starting, changing. */
export function trialRoutes(app: FastifyInstance, book: Book): void {
  app.get('/api/trials', (request) => {
    const { units, decimal, ...search } = shaped(trialsQuery, request.query);
    return trialCards(book, { units, decimalMark: decimal }, search);
  });

  app.post('/api/trials', async (request, reply) => {
    const { correction, ...wanted } = shaped(newTrial, request.body);
    const started = await startTrial(book, {
      ...wanted,
      correction: correction === undefined ? undefined : valueOrTrouble(correctionByName(correction)),
    });
    return reply.status(201).send(valueOrTrouble(started));
  });

  app.get<WithId>('/api/trials/:id', async (request) => {
    const { view, looking } = lookingFrom(request.query);
    const early = shaped(trialPageQuery, request.query).early === '1';
    return valueOrTrouble(await trialPageOf(book, request.params.id, view, looking, { early }));
  });

  app.patch<WithId>('/api/trials/:id', async (request) => {
    const { reason, correction, stamp, ...edit } = shaped(trialEdit, request.body);
    const standard = correction === undefined ? undefined : valueOrTrouble(correctionByName(correction));
    return valueOrTrouble(
      await editTrial(book, request.params.id, { ...edit, correction: standard }, reason, stamp),
    );
  });
}
