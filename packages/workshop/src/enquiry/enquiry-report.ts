import type { Enquiry } from '@pullbook/core/reach';
import type { Remark } from '@pullbook/core/remark';
import type { ViewOptions } from '@pullbook/views';
import { answerReport } from '../edge/reach-report.ts';

/** A kept enquiry as it leaves the program: the answer in the words of `pullbook reach --json`, and what became of it. */
export type EnquiryReport = ReturnType<typeof answerReport> &
  Pick<Enquiry, 'id' | 'question' | 'asked' | 'at' | 'pullIds' | 'madeBy' | 'became' | 'cards'>;

/** `remarks`: what is no longer so; `words`: units of sentences for a person, `null` SI. */
export function enquiryReport(
  { id, question, combinationId, asked, answer: kept, pullIds, madeBy, became, cards, at }: Enquiry,
  remarks: readonly Remark[] = [],
  words: ViewOptions | null = null,
): EnquiryReport {
  const { combinationName: name, standard, answer, near } = kept;
  const told = answerReport({ combinationId, name, standard, near, remarks }, answer, words);
  return { ...told, id, question, asked, at, pullIds, madeBy, became, cards };
}

/** The figures that go with a card: those of a report without curves, and without what only this book knows. */
export type CardNumbers = Pick<
  EnquiryReport,
  | 'schemaVersion'
  | 'question'
  | 'asked'
  | 'name'
  | 'target'
  | 'standard'
  | 'factor'
  | 'feasible'
  | 'reason'
  | 'at'
> & { isInvented: boolean; now: CardRung; rungs: CardRung[] };

type CardRung = Omit<EnquiryReport['now'], 'points' | 'assumptions' | 'nearest'>;

export function cardNumbers(enquiry: Enquiry, isInvented: boolean): CardNumbers {
  const { schemaVersion, question, asked, name, target, standard, factor, feasible, reason, at, now, rungs } =
    enquiryReport(enquiry);
  const shown = { schemaVersion, question, asked, name, target, standard, factor, feasible, reason, at };
  return { ...shown, isInvented, now: ofCard(now), rungs: rungs.map(ofCard) };
}

function ofCard({ points: _, assumptions: __, nearest: ___, ...figures }: EnquiryReport['now']): CardRung {
  return figures;
}
