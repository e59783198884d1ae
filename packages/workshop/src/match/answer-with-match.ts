import { restsOnSpeedLine } from '@pullbook/core/explain';
import { remark } from '@pullbook/core/remark';
import type { Finding } from '@pullbook/core/rule';
import type { Trial, TrialAnswer } from '@pullbook/core/trial';
import type { Book } from '@pullbook/store';
import { answerOf, type Looking } from '../trial-answer.ts';
import { matchedSides } from './matched-sides.ts';

/**
 * A trial's answer with what its supercharger matches add. A match is made only where something of the answer would read
 * otherwise by it: a reason that rests on the speed line, or a belt that the trend of boost asks about.
 */
export async function answerWithMatch(book: Book, trial: Trial, looking: Looking = {}): Promise<TrialAnswer> {
  const answer = await answerOf(book, trial, looking);
  if (!restsOnMatch(answer)) return answer;
  return answerOf(book, trial, looking, await matchedSides(book, trial));
}

/**
 * The same at once, for a page that shall stand before a match is fitted: what rests on one is left out, which a remark says.
 */
export async function answerBeforeMatch(
  book: Book,
  trial: Trial,
  looking: Looking = {},
): Promise<{ answer: TrialAnswer; isWhole: boolean }> {
  const answer = await answerOf(book, trial, looking);
  if (!restsOnMatch(answer)) return { answer, isWhole: true };
  const early = {
    ...answer,
    explanations: answer.explanations.filter((one) => !restsOnSpeedLine(one)),
    findings: answer.findings.filter((one) => !asksAboutBelt(one)),
    remarks: [...answer.remarks, MATCH_TO_COME],
  };
  return { answer: early, isWhole: false };
}

const restsOnMatch = ({ explanations, findings }: TrialAnswer): boolean =>
  explanations.some(restsOnSpeedLine) || findings.some(asksAboutBelt);

const asksAboutBelt = ({ ruleId }: Finding): boolean => ruleId === 'V13';

const MATCH_TO_COME = remark(
  'note',
  'match-to-come',
  'The supercharger match of this trial is being worked out; what its map and its fit say of the reason comes in a moment.',
);
