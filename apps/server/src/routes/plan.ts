import {
  type Book,
  baselinesAtRisk,
  forgetPlan,
  keepPlan,
  planPageOf,
  pullSheetOf,
  wordsOf,
} from '@pullbook/workshop';
import type { FastifyInstance } from 'fastify';
import { shaped } from '../bodies.ts';
import { planForgotten, planQuery, planToKeep, riskQuery, sheetQuery } from '../plan-bodies.ts';
import { valueOrTrouble } from '../trouble.ts';

type WithId = { Params: { id: string } };

/** The plan of a trial: looked at, kept, forgotten, printed; and what would be lost with a baseline. */
export function planRoutes(app: FastifyInstance, book: Book): void {
  app.get<WithId>('/api/trials/:id/plan', async (request) => {
    const { units, decimal, ...asked } = shaped(planQuery, request.query);
    return valueOrTrouble(await planPageOf(book, request.params.id, asked, { units, decimalMark: decimal }));
  });

  app.post<WithId>('/api/trials/:id/plan', async (request) => {
    const { stamp, ...asked } = shaped(planToKeep, request.body);
    return valueOrTrouble(await keepPlan(book, request.params.id, asked, stamp));
  });

  app.delete<WithId>('/api/trials/:id/plan', async (request) => {
    const { stamp } = shaped(planForgotten, request.body);
    return valueOrTrouble(await forgetPlan(book, request.params.id, stamp));
  });

  app.get<WithId>('/api/trials/:id/plan/sheet', async (request, reply) => {
    const { units, decimal, paper, ...asked } = shaped(sheetQuery, request.query);
    const view = { units, decimalMark: decimal };
    const { html } = valueOrTrouble(await pullSheetOf(book, request.params.id, asked, view, paper));
    return (
      reply
        // A page by itself: its own style and nothing else.
        .header('content-security-policy', "default-src 'none'; style-src 'unsafe-inline'")
        .type('text/html; charset=utf-8')
        .send(html)
    );
  });

  app.get('/api/baselines-at-risk', async (request) => {
    const { units, decimal, fitted } = shaped(riskQuery, request.query);
    const risks = await baselinesAtRisk(book, fitted);
    return risks.map(({ trialId, question, combinationId, remark }) => ({
      trialId,
      question,
      combinationId,
      text: wordsOf(remark, { units, decimalMark: decimal }),
    }));
  });
}
