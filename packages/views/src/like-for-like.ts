import { isOfParts } from '@pullbook/core/compare';
import { writeSaid } from '@pullbook/core/quantity';
import { unlikeConditions } from '@pullbook/core/trial';
import type { TrialPage } from './model.ts';
import type { TrialInView } from './trial-in-view.ts';

const ORDER = ['differs', 'unknown', 'alike'];

/** Every condition of the compared pulls: what differs first, then what is not known, then what is alike. */
export function likeForLike({ comparison, combinations, show }: TrialInView): TrialPage['likeForLike'] {
  const unlike = comparison === null ? [] : unlikeConditions(comparison).map(({ id }) => id);
  return (comparison?.conditions ?? [])
    .toSorted((one, other) => ORDER.indexOf(one.state) - ORDER.indexOf(other.state))
    .map(({ id, label, values, parts, state, why }) => ({
      id,
      label,
      values: combinations
        .filter(({ key }) => values[key] !== undefined)
        .map(({ key }) => `${key} ${writeSaid(values[key]!, parts?.[key], show.options)}`)
        .join(', '),
      state,
      why,
      isPart: isOfParts({ id }),
      isUnlike: unlike.includes(id),
    }));
}
