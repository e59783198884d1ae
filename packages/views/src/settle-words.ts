import type { Gain } from '@pullbook/core/compare';
import { pullsToSettle, type Settling } from '@pullbook/core/plan';
import type { ScatterComparison } from '@pullbook/core/scatter';
import type { SaidGain } from './said-gain.ts';

const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six'];

/** `two more pulls of each would likely settle it`: with 80 % odds, if the gain is as it looks; '' where none would. */
export function settleWords({ gain }: SaidGain): string {
  const settling = settlingOf(gain);
  if (settling === null || settling.morePulls === null || settling.morePulls === 0) return '';
  const number = NUMBERS[settling.morePulls] ?? String(settling.morePulls);
  return `${number} more ${settling.morePulls === 1 ? 'pull' : 'pulls'} of each would likely settle it`;
}

/** Why more pulls of the same kind would not settle it, and what would; '' where they would. */
export function notSettledWords({ gain, baseline, changed }: SaidGain): string {
  if (settlingOf(gain)?.because !== 'set-up') return '';
  const parts = gain.band!.scatter.gains.find(({ group }) => group === gain.changedKey)!.parts;
  const others = parts.setUp + parts.day + parts.cell;
  if (parts.cell > others / 2 && parts.cell > parts.drift)
    return 'That more pulls would settle it: what hides the gain is what lies between the cells, so both must be pulled in one.';
  return parts.drift > others
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
