import type { ReachPage } from '@pullbook/views/reach';
import type { EnquiryReport } from '@pullbook/workshop';
import type { Context } from '../context.ts';
import { reachLines, titled } from './reach-lines.ts';

/** A kept answer: the question, the ladder as it was given, the rung that is laid open, what became of it. */
export function enquiryLines(
  page: ReachPage,
  { became, cards }: Pick<EnquiryReport, 'became' | 'cards'>,
  context: Context,
): string[] {
  return [
    ...reachLines(page, context),
    ...titled(
      'Became',
      became.map(({ trialId, at }) => `trial ${trialId.slice(0, 8)} on ${at.slice(0, 10)}`),
      context,
    ),
    ...titled(
      'Cards',
      cards.map(({ name, at }) => `${name}, ${at.slice(0, 10)}`),
      context,
    ),
  ];
}
