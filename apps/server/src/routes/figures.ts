import { type Book, figuresPageOf, predict, scatterPriorForm } from '@pullbook/workshop';
import type { FastifyInstance } from 'fastify';
import { shaped } from '../bodies.ts';
import { lookingFrom } from '../looking.ts';
import { newPrediction } from '../shop-bodies.ts';
import { valueOrTrouble } from '../trouble.ts';

type WithId = { Params: { id: string } };

/** The shop's own figures, its guess of its scatter, and what it predicts. */
export function figureRoutes(app: FastifyInstance, book: Book): void {
  app.get('/api/figures', (request) => figuresPageOf(book, lookingFrom(request.query).view));

  app.get('/api/scatter-prior', (request) => scatterPriorForm(book, lookingFrom(request.query).view));

  app.post<WithId>('/api/trials/:id/predictions', async (request, reply) => {
    const said = shaped(newPrediction, request.body);
    return reply.status(201).send(valueOrTrouble(await predict(book, request.params.id, said)));
  });
}
