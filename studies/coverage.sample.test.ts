import { describe, expect, test } from 'vitest';
import { CASES } from './coverage/cases.ts';
import { throughGate } from './coverage/gates.ts';
import { runStretch } from './coverage/run-case.ts';
import { shareOf } from './coverage/tally.ts';

// The study in small, by the same seeds: so few runs only tell that nothing is broken. `npm run study:coverage` is the study.
const RUNS = 120;
/** A share may miss its gate by so many binomial standard errors at the gate: 1 in 15,000 by chance, and the seeds stand. */
const ERRORS = 4;

const caseOf = (id: string) => CASES.find((one) => one.id === id)!;
const allowance = (gate: number) => ERRORS * Math.sqrt((gate * (1 - gate)) / RUNS);

describe('coverage, in small', () => {
  test.each([
    'drawn-one-set-up-1',
    'drawn-one-set-up-3',
    'drawn-guessed-2',
    'drawn-another-day',
    'exact-two-3',
    'wrong-2-3',
    'drift-ABBA',
    'soak-ABBA-2',
    'several-2',
    'looks-planned-exact',
    'history-of-one-drawn-2',
  ])('%s', { timeout: 60_000 }, (id) => {
    const one = caseOf(id);
    const tally = runStretch(one, 0, RUNS);
    expect(tally.runs).toBe(RUNS);
    expect(one.gates.length).toBeGreaterThan(0);
    for (const { measure, low = 0, high = 1 } of one.gates) {
      const { share } = shareOf(tally, measure);
      expect(share, `${measure} from ${low}`).toBeGreaterThanOrEqual(low - allowance(low));
      expect(share, `${measure} to ${high}`).toBeLessThanOrEqual(high + allowance(high));
    }
  });

  test('it can fail: pulls that scatter twice as stated, one against one, miss the gate', () => {
    const tally = runStretch(caseOf('wrong-2-1'), 0, RUNS);
    // Student's t with 20 degrees of freedom, half as wide: ±1.043 normal deviates hold 70 % (any table).
    expect(Math.abs(shareOf(tally, 'mean').share - 0.703)).toBeLessThan(allowance(0.703));
    expect(throughGate({ measure: 'mean', low: 0.93 }, tally).outcome).toBe('failed');
  });

  test('a stretch is the same whenever it is run, and another stretch is another', () => {
    const one = caseOf('drawn-one-set-up-1');
    expect(runStretch(one, 1, 5)).toEqual(runStretch(one, 1, 5));
    expect(runStretch(one, 1, 5).halfWidths).toEqual(runStretch(one, 1, 5).halfWidths);
    expect(runStretch(one, 2, 5).sums.pointwise).not.toBe(runStretch(one, 1, 5).sums.pointwise);
  });
});
