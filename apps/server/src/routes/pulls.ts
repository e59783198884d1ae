import {
  addSummaryPull,
  amendPull,
  type Book,
  pullDetailsFromText,
  pullPageOf,
  pullRows,
} from '@pullbook/workshop';
import type { FastifyInstance } from 'fastify';
import { pullAmendment, shaped, summaryPull } from '../bodies.ts';
import { lookingFrom } from '../looking.ts';
import { valueOrTrouble } from '../trouble.ts';

type WithId = { Params: { id: string } };

/** Pulls: rows, one page, amending what was written down, entering remembered peaks. */
export function pullRoutes(app: FastifyInstance, book: Book): void {
  app.get('/api/pulls', (request) => pullRows(book, lookingFrom(request.query).view));

  app.get<WithId>('/api/pulls/:id', async (request) => {
    const { view, looking } = lookingFrom(request.query);
    return valueOrTrouble(await pullPageOf(book, request.params.id, view, looking.correction));
  });

  app.patch<WithId>('/api/pulls/:id', async (request) => {
    const { amendment, reason } = shaped(pullAmendment, request.body);
    const details = valueOrTrouble(pullDetailsFromText(amendment, new Date().toISOString()));
    return valueOrTrouble(await amendPull(book, request.params.id, details, reason));
  });

  app.post('/api/pulls', async (request, reply) => {
    const { summary, origin, ...rest } = shaped(summaryPull, request.body);
    const details = valueOrTrouble(pullDetailsFromText(rest, new Date().toISOString()));
    return reply.status(201).send(valueOrTrouble(await addSummaryPull(book, { summary, origin, details })));
  });
}
