import {
  type Book,
  checkThing,
  letRuleSpeak,
  rulesReport,
  setRuleThreshold,
  silenceRule,
} from '@pullbook/workshop';
import type { FastifyInstance } from 'fastify';
import { shaped } from '../bodies.ts';
import { lookingFrom } from '../looking.ts';
import { silencing, thresholdChange } from '../rule-bodies.ts';
import { valueOrTrouble } from '../trouble.ts';

/** Rules with their thresholds, what they say of a thing, and silencing one. */
export function ruleRoutes(app: FastifyInstance, book: Book): void {
  app.get('/api/rules', (request) => rulesReport(book, lookingFrom(request.query).view));

  app.patch<{ Params: { id: string } }>('/api/rules/thresholds/:id', async (request) => {
    const { value } = shaped(thresholdChange, request.body);
    const { view } = lookingFrom(request.query);
    return valueOrTrouble(await setRuleThreshold(book, request.params.id, value, view));
  });

  app.get<{ Params: { id: string } }>('/api/findings/:id', async (request) => {
    const { view } = lookingFrom(request.query);
    return valueOrTrouble(await checkThing(book, request.params.id, view));
  });

  app.post<{ Params: { rule: string } }>('/api/rules/:rule/silence', async (request) => {
    const { kind, id, reason } = shaped(silencing, request.body);
    return valueOrTrouble(await silenceRule(book, { rule: request.params.rule, kind, given: id, reason }));
  });

  app.post<{ Params: { rule: string } }>('/api/rules/:rule/speak', async (request) => {
    const { kind, id, reason } = shaped(silencing, request.body);
    return valueOrTrouble(await letRuleSpeak(book, { rule: request.params.rule, kind, given: id, reason }));
  });
}
