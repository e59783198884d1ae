import { planPulls } from '@pullbook/core/plan';
import { BUILT_IN_PRIOR, historyFrom } from '@pullbook/core/shop';

/** One plan after another for a cam after three pulls of the baseline, each with another chance asked for. */
export function planTimed(): () => void {
  const history = historyFrom(BUILT_IN_PRIOR, 'injected');
  const made = [0, 1, 2].map((pull) => ({
    key: 'A',
    setUp: 'A',
    session: 'one',
    cell: null,
    hours: pull / 4,
  }));
  let run = 0;
  return () => {
    run += 1;
    const plan = planPulls({
      history,
      combinations: [
        { key: 'A', takenApart: false },
        { key: 'B', takenApart: true },
      ],
      gainRatio: 0.01,
      odds: 0.7 + run / 200,
      made,
      onTheBrake: null,
      looks: 2,
      pace: { minutesPerPull: 15, hoursTakenApart: 3, hoursKept: 0.25 },
      maximumPulls: 16,
    });
    if (plan === null) throw new Error('the bench plan has no order');
  };
}
