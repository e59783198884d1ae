import { randomUUID } from 'node:crypto';
import { type Enquiry, keptAnswer, nearPullsOf, type ReachAnswer } from '@pullbook/core/reach';
import { accepted, type Result } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import type { ReachBundle } from '@pullbook/views/reach';
import { programVersion } from '../places.ts';
import { type ReachRequest, reachOfCombination } from '../reach/reach-of-combination.ts';
import { runReach } from '../reach/run-reach.ts';
import { refuse } from '../refuse.ts';
import { pullsBehind } from './answer-pulls.ts';
import { askedWords } from './asked-words.ts';

/** A question that long is a text of its own. */
const LONGEST = 500;

export interface KeepOptions {
  /** In a person's words; missing: worked out of what is asked. */
  question?: string | undefined;
  now?: Date | undefined;
}

/**
 * Asks a target of a combination and keeps the answer as it is given. The search is made here, by the seed of the request: the same
 * seed over the same book gives the answer that a page has shown.
 */
export async function keepEnquiry(
  book: Book,
  combinationNamed: string,
  request: ReachRequest,
  options: KeepOptions = {},
): Promise<Result<Enquiry>> {
  const tooLong = questionTooLong(options);
  if (tooLong) return tooLong;
  const bundle = await reachOfCombination(book, combinationNamed, request);
  if (!bundle.ok) return bundle;
  const kept = await keepAnswer(book, bundle.value, await runReach(bundle.value.input), options);
  return kept.ok ? accepted(kept.value, bundle.remarks) : kept;
}

/** Keeps the answer of a search that was made of this book just now. */
export async function keepAnswer(
  book: Book,
  { combinationId, name, asked, input, near }: ReachBundle,
  answer: ReachAnswer,
  options: KeepOptions = {},
): Promise<Result<Enquiry>> {
  const tooLong = questionTooLong(options);
  if (tooLong) return tooLong;
  const { question = '', now = new Date() } = options;
  if (combinationId === null) throw new Error(`the bundle of ${name} is of no combination`);
  const air = input.builds[0]?.match?.input.air ?? input.baseline.air;
  const enquiry: Enquiry = {
    id: randomUUID(),
    question: question.trim() || askedWords(asked, name),
    combinationId,
    asked,
    answer: {
      combinationName: name,
      standard: input.standard,
      air: { pressure: air.pressure, temperature: air.temperature },
      answer: keptAnswer(answer),
      near: nearPullsOf(near, [answer.now, ...answer.rungs]),
    },
    pullIds: pullsBehind(input),
    madeBy: { version: programVersion(), seed: input.seed },
    became: [],
    cards: [],
    at: now.toISOString(),
  };
  await book.addEnquiry(enquiry);
  return accepted(enquiry);
}

function questionTooLong({ question = '' }: KeepOptions) {
  const { length } = question.trim();
  if (length <= LONGEST) return null;
  return refuse('question-too-long', `A question may have ${LONGEST} letters; this one has ${length}.`);
}
