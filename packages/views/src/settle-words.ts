import type { Gain } from '@pullbook/core/compare';
import { pullsToSettle, type Settling } from '@pullbook/core/plan';
import type { ScatterComparison } from '@pullbook/core/scatter';
import type { SaidGain } from './said-gain.ts';
import { capitalised } from './wording.ts';

const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six'];

/** `Two more pulls of each would likely settle it.`: with 80 % odds, if the gain is as it looks; '' where none would. */
export function settleWords({ gain }: SaidGain): string {
  const settling = settlingOf(gain);
  if (settling === null || settling.morePulls === null || settling.morePulls === 0) return '';
  const number = capitalised(NUMBERS[settling.morePulls] ?? String(settling.morePulls));
  return `${number} more ${settling.morePulls === 1 ? 'pull' : 'pulls'} of each would likely settle it.`;
}

/** Why more pulls of the same kind would not settle it, and what would; '' where they would. */
export function notSettledWords({ gain, baseline, changed }: SaidGain): string {
  if (settlingOf(gain)?.because !== 'set-up') return '';
  const parts = gain.band!.scatter.gains.find(({ group }) => group === gain.changedKey)!.parts;
  return parts.drift > parts.setUp + parts.day + parts.cell
    ? `That more pulls in this order would settle it: what hides the gain is drift through the session, and a pull of ${baseline.key} after ${changed.key} would take it out.`
    : 'That more pulls would settle it: what hides the gain is how far a set-up moves the power, so both must go back on the brake.';
}

/** Several places of a page ask the same of one comparison, and the answer takes some milliseconds. */
const settled = new WeakMap<ScatterComparison, Map<string, Settling>>();

function settlingOf({ band, changedKey }: Gain): Settling | null {
  if (band === null || !band.scatter.gains.some(({ group }) => group === changedKey)) return null;
  const known = settled.get(band.scatter) ?? new Map<string, Settling>();
  settled.set(band.scatter, known);
  const settling = known.get(changedKey) ?? pullsToSettle(band.scatter, changedKey);
  known.set(changedKey, settling);
  return settling;
}
