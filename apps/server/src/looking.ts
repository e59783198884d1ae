import { correctionByName, type Looking } from '@pullbook/workshop';
import type { z } from 'zod';
import { lookingQuery, shaped } from './bodies.ts';
import { RequestTrouble, valueOrTrouble } from './trouble.ts';

/** How figures are to be shown, and correction and window for looking only, out of a request's query. */
export function lookingFrom(query: unknown) {
  const asked = shaped(lookingQuery, query);
  return { view: { units: asked.units, decimalMark: asked.decimal }, looking: lookedAt(asked) };
}

/** Correction and window of a query that was checked already. */
export function lookedAt(asked: z.output<typeof lookingQuery>): Looking {
  const { from, to } = asked;
  if ((from === undefined) !== (to === undefined) || (from !== undefined && to !== undefined && from >= to)) {
    throw new RequestTrouble(
      400,
      'averages-window',
      `A window needs a lower and a higher engine speed; from ${from ?? 'nothing'} to ${to ?? 'nothing'} is not one.`,
    );
  }
  return {
    correction:
      asked.correction === undefined ? undefined : valueOrTrouble(correctionByName(asked.correction)),
    averagesWindowRpm: from === undefined || to === undefined ? undefined : [from, to],
  };
}
