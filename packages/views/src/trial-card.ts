import type { TrialAnswer } from '@pullbook/core/trial';
import { cardChips } from './chips.ts';
import { daysText } from './date.ts';
import type { TrialCard, ViewOptions } from './model.ts';
import { answerSentence } from './sentence.ts';
import { trialPicture } from './trial-chart.ts';
import { countedPulls, type TrialInView, trialInView } from './trial-in-view.ts';
import { counted, listed } from './wording.ts';

/** A trial on the first page: its question, its answer and a small picture of the power. */
export function trialCard(answer: TrialAnswer, options: ViewOptions): TrialCard {
  const view = trialInView(answer, options);
  return {
    id: view.trial.id,
    question: view.trial.question,
    sentence: answerSentence(view),
    chips: cardChips(view),
    facts: factsLine(view),
    picture: trialPicture(view),
  };
}

function factsLine(view: TrialInView): string {
  const pulls = countedPulls(view);
  const missing = listed(view.missing.map(({ key }) => key));
  return [
    missing && pulls.length > 0
      ? `0 pulls of ${missing}, ${pulls.length} of the others`
      : counted(pulls.length, 'pull'),
    counted(view.combinations.length, 'combination'),
    daysText(pulls.map(({ pull }) => pull.recordedAt)),
  ]
    .filter(Boolean)
    .join(' · ');
}
