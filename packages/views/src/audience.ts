import { type Audience, isOpen } from '@pullbook/core/pull';
import type { TrialAnswer } from '@pullbook/core/trial';
import { dayText } from './date.ts';
import type { Chip } from './model.ts';

const WHO: Record<Audience['who'], string> = {
  shop: 'the shop alone',
  customer: 'the customer whose engine it is',
  everyone: 'everyone',
};

/** `the shop alone`; `everyone, not before 3 May 2026`. */
export function audienceWords({ who, notBefore }: Audience): string {
  return `${WHO[who]}${notBefore === null ? '' : `, not before ${dayText(notBefore)}`}`;
}

/** Chips of what may not be shown to everyone; none for what may. */
export function audienceChips({ who, notBefore }: Audience): Chip[] {
  const chips: Chip[] = [];
  if (who === 'shop') chips.push({ text: 'Private', tone: 'caution' });
  if (who === 'customer') chips.push({ text: 'Customer’s', tone: 'caution' });
  if (notBefore !== null) chips.push({ text: `Not before ${dayText(notBefore)}`, tone: 'caution' });
  return chips;
}

/**
 * What of a trial's still is not for everyone, one line each: the trial itself, and counted pulls, whose curves it shows.
 * Empty: nothing stands in the way.
 */
export function heldBack({ trial, pulls }: TrialAnswer): string[] {
  const counted = trial.pulls.filter(({ role }) => role === 'counted');
  const shown = counted.flatMap(({ pullId }) => pulls.get(pullId) ?? []);
  return heldLines([{ name: trial.question, audience: trial.audience }, ...shown]);
}

/** The same of what only a bundle carries: pulls that do not count, which go with it whole. */
export function heldBackInBundle({ trial, pulls }: TrialAnswer): string[] {
  const others = trial.pulls.filter(({ role }) => role !== 'counted');
  return heldLines(others.flatMap(({ pullId }) => pulls.get(pullId) ?? []));
}

const heldLines = (things: readonly { name: string; audience: Audience }[]): string[] =>
  things
    .filter(({ audience }) => !isOpen(audience))
    .map(({ name, audience }) => `“${name}” may be seen by ${audienceWords(audience)}.`);
