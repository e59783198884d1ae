import { type Comparison, type ConditionDifference, isOfParts } from '../compare/index.ts';
import type { Badge } from './model.ts';

/** Rows that another badge answers for, that come with any change of parts, or that the comparison itself evens out. */
const ANSWERED_ELSEWHERE = ['day', 'age', 'session', 'set-up', 'place-in-session', 'standard', 'bin-width'];

const askedOf = ({ conditions }: Comparison): ConditionDifference[] =>
  conditions.filter((one) => !isOfParts(one) && !ANSWERED_ELSEWHERE.includes(one.id));

/** Conditions beside the change itself that differ. */
export const unlikeConditions = (comparison: Comparison): ConditionDifference[] =>
  askedOf(comparison).filter(({ state }) => state === 'differs');

/** Nothing beside the change differs, and nothing that is asked for is unknown. */
export function likeForLikeBadge(comparison: Comparison): Badge {
  const asked = askedOf(comparison);
  const differs = unlikeConditions(comparison);
  const unknown = asked.filter(({ state }) => state === 'unknown');
  const why = [
    ...(differs.length > 0 ? [`Differs: ${labels(differs)}.`] : []),
    ...(unknown.length > 0 ? [`Not known: ${labels(unknown)}.`] : []),
  ];
  return {
    id: 'like-for-like',
    label: 'Like for like',
    earned: why.length === 0,
    why:
      why.length === 0
        ? `All ${asked.length} conditions beside the change itself were looked at and are alike.`
        : why.join(' '),
  };
}

const labels = (conditions: readonly ConditionDifference[]): string =>
  conditions
    .map(({ label }) => label)
    .map((label, place) => (place === 0 ? label : `${label.charAt(0).toLowerCase()}${label.slice(1)}`))
    .join('; ');
