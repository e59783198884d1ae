import {
  addSummaryPull,
  amendPull,
  type Book,
  pullDetailsFromText,
  pullPageOf,
  recordedPageOf,
  searchPulls,
} from '@pullbook/workshop';
import type { FastifyInstance } from 'fastify';
import { pullAmendment, pullsQuery, recordedQuery, shaped, summaryPull } from '../bodies.ts';
import { lookingFrom } from '../looking.ts';
import { valueOrTrouble } from '../trouble.ts';

type WithId = { Params: { id: string } };

/** Pulls: a page of those sought, one page, amending what was written down, entering remembered peaks. */
export function pullRoutes(app: FastifyInstance, book: Book): void {
  app.get('/api/pulls', async (request) => {
    const { units, decimal, ...search } = shaped(pullsQuery, request.query);
    return valueOrTrouble(await searchPulls(book, search, { units, decimalMark: decimal }));
  });

  app.get<WithId>('/api/pulls/:id', async (request) => {
    const { view, looking } = lookingFrom(request.query);
    return valueOrTrouble(await pullPageOf(book, request.params.id, view, looking.correction));
  });

  app.get<WithId>('/api/pulls/:id/recorded', async (request) => {
    const { units, decimal, over, low, high, channels } = shaped(recordedQuery, request.query);
    const range: [number, number] | null =
      low === undefined || high === undefined || low >= high ? null : [low, high];
    const look = { over, range, channels: channels?.split(',').filter(Boolean) ?? null };
    return valueOrTrouble(
      await recordedPageOf(book, request.params.id, look, { units, decimalMark: decimal }),
    );
  });

  app.patch<WithId>('/api/pulls/:id', async (request) => {
    const { amendment, reason, stamp } = shaped(pullAmendment, request.body);
    const details = valueOrTrouble(pullDetailsFromText(amendment, new Date().toISOString()));
    return valueOrTrouble(await amendPull(book, request.params.id, details, reason, stamp));
  });

  app.post('/api/pulls', async (request, reply) => {
    const { summary, origin, like, ...rest } = shaped(summaryPull, request.body);
    const details = valueOrTrouble(pullDetailsFromText(rest, new Date().toISOString()));
    return reply
      .status(201)
      .send(valueOrTrouble(await addSummaryPull(book, { summary, origin, details, like })));
  });
}
