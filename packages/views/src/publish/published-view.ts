import type { TrialAnswer } from '@pullbook/core/trial';
import type { ViewOptions } from '../model.ts';
import { type TrialInView, trialInView } from '../trial-in-view.ts';

/** A name longer than this, in letters, would push out what the picture says of it. */
const LONGEST_NAME = 44;

/** A trial laid out for pictures: long names of its combinations are cut, so that a headline keeps its figures. */
export function publishedView(answer: TrialAnswer, options: ViewOptions): TrialInView {
  const combinations = answer.trial.combinations.map((one) => ({ ...one, shortName: cut(one.shortName) }));
  return trialInView({ ...answer, trial: { ...answer.trial, combinations } }, options);
}

function cut(name: string): string {
  const letters = [...name.trim()];
  if (letters.length <= LONGEST_NAME) return name.trim();
  return `${letters
    .slice(0, LONGEST_NAME - 1)
    .join('')
    .trimEnd()}…`;
}
