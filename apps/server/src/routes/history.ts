import { type Book, changeEngine, history, lastStep, staleAfterStep, undo } from '@pullbook/workshop';
import type { FastifyInstance } from 'fastify';
import { engineChange, historyQuery, shaped, undoing } from '../bodies.ts';
import { lookingFrom } from '../looking.ts';
import { valueOrTrouble } from '../trouble.ts';

/** What was done to the book, and taking it back; and what may be changed of an engine. */
export function historyRoutes(app: FastifyInstance, book: Book): void {
  app.get('/api/history', (request) => {
    const { units, decimal, before, subject } = shaped(historyQuery, request.query);
    return history(
      book,
      { units, decimalMark: decimal },
      { ...(before === undefined ? {} : { before }), ...(subject === undefined ? {} : { subject }) },
    );
  });

  app.get('/api/history/last', async (request) => ({
    step: await lastStep(book, lookingFrom(request.query).view),
  }));

  // Beside the step and not in it: what was done is said at once, while these answers are still worked out.
  app.get('/api/history/last/errata', async (request) => {
    const { view } = lookingFrom(request.query);
    const step = await lastStep(book, view);
    return step === null ? [] : staleAfterStep(book, step, view);
  });

  app.post('/api/undo', async (request) => {
    const { uid } = shaped(undoing, request.body);
    return valueOrTrouble(await undo(book, uid, lookingFrom(request.query).view));
  });

  app.patch<{ Params: { id: string } }>('/api/engines/:id', async (request) => {
    const { reason, stamp, ...change } = shaped(engineChange, request.body);
    return valueOrTrouble(await changeEngine(book, request.params.id, change, reason, stamp));
  });
}
