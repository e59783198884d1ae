import type { PartChange } from '../combination/index.ts';
import type { Comparison } from '../compare/index.ts';
import { thingsChanged } from './change-remarks.ts';
import { listed } from './listed.ts';
import type { Badge } from './model.ts';

/** Rows of the tune, by the thing they are about. */
const TUNE_ROWS: Readonly<Record<string, string>> = {
  lambda: 'mixture',
  'tune-lambda': 'mixture',
  spark: 'spark',
  'tune-spark': 'spark',
  'fuel-pressure': 'fuel pressure',
  'tune-fuel-pressure': 'fuel pressure',
  'tune-jets': 'jets',
  'tune-notes': 'notes of the tune',
  'fuel-batch': 'fuel batch',
};

/** One section or package on the sheets and nothing of the tune; or nothing on the sheets and one thing of the tune. */
export function oneChangeBadge(
  comparison: Comparison,
  changes: Readonly<Record<string, readonly PartChange[]>>,
): Badge {
  const tuned = [
    ...new Set(
      comparison.conditions
        .filter(({ id, state }) => state === 'differs' && TUNE_ROWS[id] !== undefined)
        .map(({ id }) => TUNE_ROWS[id]!),
    ),
  ];
  const found = comparison.gains.map(({ changedKey }) => {
    const parts = changes[changedKey] === undefined ? [] : thingsChanged(changes[changedKey]);
    return { changedKey, isKnown: changes[changedKey] !== undefined, all: [...parts, ...tuned] };
  });
  const badge = { id: 'one-change', label: 'One change' } as const;
  if (found.every(({ isKnown, all }) => isKnown && all.length === 1))
    return {
      ...badge,
      earned: true,
      why: `${found.map(({ changedKey, all }) => `${changedKey}: only ${all[0]}`).join('; ')} differs from the baseline.`,
    };
  const whyNot = found.flatMap(({ changedKey, isKnown, all }) => {
    if (!isKnown)
      return [`What changed in ${changedKey} is not known: its sheet or the baseline's is missing.`];
    if (all.length === 0)
      return [
        `Nothing differs between the sheets of ${changedKey} and the baseline, nor in the tune: enter what was changed.`,
      ];
    return all.length === 1 ? [] : [`${all.length} things differ in ${changedKey}: ${listed(all)}.`];
  });
  return { ...badge, earned: false, why: whyNot.join(' ') };
}
