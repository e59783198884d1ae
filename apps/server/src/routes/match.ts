import {
  addMapFromText,
  type Book,
  bandsOfMatch,
  changeMap,
  keepMatchPrediction,
  mapAsCsv,
  mapCardsOf,
  mapPageOf,
  matchAirFromText,
  matchOfCombination,
  matchOfTrial,
} from '@pullbook/workshop';
import type { FastifyInstance } from 'fastify';
import { attachment } from '../attachment.ts';
import { shaped } from '../bodies.ts';
import { goneAway } from '../gone-away.ts';
import {
  bandsWanted,
  casesOf,
  mapChange,
  mapQuery,
  matchQuery,
  newMap,
  predictionToKeep,
} from '../match-bodies.ts';
import { valueOrTrouble } from '../trouble.ts';

/** What web servers by custom answer a request whose sender has left. */
const GONE_AWAY = 499;

type WithId = { Params: { id: string } };

/** Supercharger matches of trials and combinations, their bands, what they foretell; and the compressor maps. */
export function matchRoutes(app: FastifyInstance, book: Book): void {
  app.get<WithId>('/api/trials/:id/match', async (request) => {
    const air = valueOrTrouble(matchAirFromText(shaped(matchQuery, request.query)));
    return valueOrTrouble(await matchOfTrial(book, request.params.id, { air }));
  });

  app.get<WithId>('/api/combinations/:id/match', async (request) => {
    const air = valueOrTrouble(matchAirFromText(shaped(matchQuery, request.query)));
    return valueOrTrouble(await matchOfCombination(book, request.params.id, { air }));
  });

  app.post('/api/match/bands', async (request, reply) => {
    const wanted = shaped(bandsWanted, request.body);
    const { draws, seed } = wanted;
    const signal = goneAway(reply);
    try {
      return await bandsOfMatch(casesOf(wanted), { draws, seed, signal });
    } catch (trouble) {
      // Nobody reads it; it only ends the request without a cry in the terminal.
      if (signal.aborted) return reply.status(GONE_AWAY).send();
      throw trouble;
    }
  });

  app.post<WithId>('/api/trials/:id/match/keep', async (request, reply) => {
    const { key, ...options } = shaped(predictionToKeep, request.body);
    const kept = valueOrTrouble(await keepMatchPrediction(book, request.params.id, key, options));
    return reply.status(201).send(kept);
  });

  app.get('/api/maps', (request) => {
    const { units, decimal } = shaped(mapQuery, request.query);
    return mapCardsOf(book, { units, decimalMark: decimal });
  });

  app.post('/api/maps', async (request, reply) => {
    const { text, ...more } = shaped(newMap, request.body);
    return reply.status(201).send(valueOrTrouble(await addMapFromText(book, text, more)));
  });

  app.get<WithId>('/api/maps/:id', async (request) => {
    const { units, decimal } = shaped(mapQuery, request.query);
    return valueOrTrouble(await mapPageOf(book, request.params.id, { units, decimalMark: decimal }));
  });

  app.get<WithId>('/api/maps/:id/csv', async (request, reply) => {
    const { name, text } = valueOrTrouble(await mapAsCsv(book, request.params.id));
    reply.header('content-disposition', attachment(`${name}.csv`));
    return reply.type('text/csv; charset=utf-8').send(text);
  });

  app.patch<WithId>('/api/maps/:id', async (request) => {
    const { reason, stamp, ...change } = shaped(mapChange, request.body);
    return valueOrTrouble(await changeMap(book, request.params.id, change, reason, stamp));
  });
}
