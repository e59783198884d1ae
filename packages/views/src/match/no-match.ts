import type { MatchBundle } from '../match-model.ts';
import type { ShownRemark, ViewOptions } from '../model.ts';
import { shownRemarks } from '../remarks.ts';

/** Why there is no match: what holds for all of it, then what each combination lacks, each said once. */
export function noMatchLines(
  { trialId, silent, left, remarks }: MatchBundle,
  options: ViewOptions,
): ShownRemark[] {
  // Of one combination there is one reason; of a trial each stands with its combination.
  if (trialId === null) return shownRemarks([...silent, ...remarks], options);
  const general = silent.filter(({ message }) => left.every(({ reason }) => reason.message !== message));
  const lacks = left.flatMap(({ key, name, reason }) =>
    shownRemarks([reason], options).map((one) => ({ ...one, text: `${key}, ${name}: ${one.text}` })),
  );
  return [...shownRemarks(general, options), ...lacks, ...shownRemarks(remarks, options)];
}
