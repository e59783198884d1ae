import { partsPage } from '@pullbook/views/reach';
import {
  answerCardOf,
  type Book,
  changePartsList,
  enquiriesPage,
  enquiryOf,
  keepEnquiry,
  noteCard,
  partsListOf,
  partsReport,
  planRung,
  reachOfCombination,
  resetPartsList,
  settingsOf,
  shownRemarks,
} from '@pullbook/workshop';
import type { FastifyInstance } from 'fastify';
import type { z } from 'zod';
import { attachment } from '../attachment.ts';
import { shaped } from '../bodies.ts';
import {
  cardQuery,
  cardToLeave,
  enquiriesQuery,
  enquiryToKeep,
  partsQuery,
  partsWanted,
  reachQuery,
  rungToPlan,
} from '../reach-bodies.ts';
import { valueOrTrouble } from '../trouble.ts';

type WithId = { Params: { id: string } };
type WithRung = { Params: { id: string; rungId: string } };

const viewOf = ({ units, decimal }: { units: 'us' | 'si'; decimal: '.' | ',' }) => ({
  units,
  decimalMark: decimal,
});

/** A power asked of a combination: what the page searches by, answers that are kept, what becomes of their rungs; the parts list. */
export function reachRoutes(app: FastifyInstance, book: Book): void {
  app.get<WithId>('/api/combinations/:id/reach', async (request) => {
    const { without, ...asked } = shaped(reachQuery, request.query);
    const parts = (without ?? '').split(',').filter((part) => part.trim() !== '');
    return valueOrTrouble(await reachOfCombination(book, request.params.id, { ...asked, without: parts }));
  });

  app.get('/api/enquiries', async (request) => {
    const { units, decimal, ...search } = shaped(enquiriesQuery, request.query);
    return valueOrTrouble(await enquiriesPage(book, viewOf({ units, decimal }), search));
  });

  app.post('/api/enquiries', async (request, reply) => {
    const { combinationId, asked, question } = shaped(enquiryToKeep, request.body);
    const kept = await keepEnquiry(book, combinationId, asked, { question });
    const remarks = shownRemarks(kept.remarks, await settingsOf(book));
    return reply.status(201).send({ id: valueOrTrouble(kept).id, remarks });
  });

  app.get<WithId>('/api/enquiries/:id', async (request) =>
    valueOrTrouble(await enquiryOf(book, request.params.id)),
  );

  app.post<WithRung>('/api/enquiries/:id/rungs/:rungId/plan', async (request, reply) => {
    const options = shaped(rungToPlan, request.body ?? {});
    const { id, rungId } = request.params;
    const planned = await planRung(book, id, rungId, options);
    const remarks = shownRemarks(planned.remarks, await settingsOf(book));
    return reply.status(201).send({ ...valueOrTrouble(planned), remarks });
  });

  cardRoutes(app, book);
  partsRoutes(app, book);
}

function cardRoutes(app: FastifyInstance, book: Book): void {
  const drawn = (id: string, asked: z.output<typeof cardToLeave>) => {
    const { units, decimal, ...wanted } = asked;
    return answerCardOf(book, id, viewOf({ units, decimal }), wanted);
  };

  app.get<WithId>('/api/enquiries/:id/card', async (request, reply) => {
    const { download, ...asked } = shaped(cardQuery, request.query);
    const card = valueOrTrouble(await drawn(request.params.id, asked));
    if (download === '1') reply.header('content-disposition', attachment(card.fileName));
    return reply.type(card.mediaType).send(Buffer.from(card.bytes));
  });

  app.post<WithId>('/api/enquiries/:id/cards', async (request, reply) => {
    const made = await drawn(request.params.id, shaped(cardToLeave, request.body ?? {}));
    const card = valueOrTrouble(made);
    await noteCard(book, card);
    const remarks = shownRemarks(made.remarks, await settingsOf(book));
    return reply.status(201).send({ name: card.fileName, remarks });
  });
}

function partsRoutes(app: FastifyInstance, book: Book): void {
  app.get('/api/parts', async (request) => {
    const view = viewOf(shaped(partsQuery, request.query));
    return { ...(await partsReport(book)), page: partsPage(await partsListOf(book), view) };
  });

  app.put('/api/parts', async (request) => {
    const { parts, stamp } = shaped(partsWanted, request.body);
    const changed =
      parts === null
        ? await resetPartsList(book, stamp)
        : await changePartsList(book, JSON.stringify(parts), { stamp });
    const remarks = shownRemarks(changed.remarks, await settingsOf(book));
    return { ...valueOrTrouble(changed), remarks };
  });
}
