import { type ConditionDifference, isOfParts } from '@pullbook/core/compare';
import { writeSaid } from '@pullbook/core/quantity';
import { unlikeConditions } from '@pullbook/core/trial';
import type { TrialPage } from './model.ts';
import type { TrialInView } from './trial-in-view.ts';

const ORDER = ['differs', 'unknown', 'alike'];

/** Every condition of the compared pulls: what differs first, then what is not known, then what is alike. */
export function likeForLike(view: TrialInView): TrialPage['likeForLike'] {
  const { comparison } = view;
  const unlike = comparison === null ? [] : unlikeConditions(comparison).map(({ id }) => id);
  return (comparison?.conditions ?? [])
    .toSorted((one, other) => ORDER.indexOf(one.state) - ORDER.indexOf(other.state))
    .map(({ id, label, values, parts, state, why }) => ({
      id,
      label,
      values: valuesText(view, { values, ...(parts && { parts }) }),
      state,
      why,
      isPart: isOfParts({ id }),
      isUnlike: unlike.includes(id),
    }));
}

/** `A gasoline, B alcohol`, each in the reader's units; `isShort`: what all have alike is written once, without their keys. */
export function valuesText(
  { combinations, show }: TrialInView,
  { values, parts }: Pick<ConditionDifference, 'values' | 'parts'>,
  isShort = false,
): string {
  const texts = combinations
    .filter(({ key }) => values[key] !== undefined)
    .map(({ key }) => ({ key, text: writeSaid(values[key]!, parts?.[key], show.options) }));
  const [first] = texts;
  if (isShort && first && texts.every(({ text }) => text === first.text)) return first.text;
  return texts.map(({ key, text }) => `${key} ${text}`).join(', ');
}
