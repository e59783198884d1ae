import { describe, expect, test } from 'vitest';
import { inventedHistory, spread } from '../scatter/history.testing.ts';
import type { DesignedPull } from './designed-pull.ts';
import { judgeDesign } from './judge-design.ts';
import { type PlanQuestion, planPulls } from './plan-pulls.ts';

const PACE = { minutesPerPull: 15, hoursTakenApart: 3, hoursKept: 0.25 };

const question = (changes: Partial<PlanQuestion> = {}): PlanQuestion => ({
  history: inventedHistory(),
  combinations: [
    { key: 'A', takenApart: false },
    { key: 'B', takenApart: true },
  ],
  gainRatio: 0.03,
  odds: 0.8,
  made: [],
  onTheBrake: null,
  looks: 1,
  pace: PACE,
  maximumPulls: 16,
  ...changes,
});

const KEPT = [
  { key: 'A', takenApart: false },
  { key: 'B', takenApart: false },
];

const keysOf = (pulls: readonly { key: string }[]): string => pulls.map(({ key }) => key).join('');

const madeOf = (keys: string, setUp: string, hours = 0): DesignedPull[] =>
  [...keys].map((key, place) => ({ key, setUp, session: 'today', cell: 'cell 1', hours: hours + place / 4 }));

describe('which pulls, in which order', () => {
  test('a change that needs no taking apart is pulled in turn, so that a drift cancels', () => {
    const plan = planPulls(question({ combinations: KEPT, gainRatio: 0.01 }))!;
    expect(plan.order).toBe('in turn');
    expect(keysOf(plan.pulls).slice(0, 4)).toBe('ABBA');
    expect(new Set(plan.pulls.map(({ setUp }) => setUp)).size).toBe(1);
    const [first, ...rest] = plan.pulls.slice(0, 4);
    const times = (key: string) =>
      [first!, ...rest].filter((one) => one.key === key).map(({ hours }) => hours!);
    const mean = (values: number[]) => values.reduce((sum, one) => sum + one, 0) / values.length;
    expect(mean(times('A'))).toBeCloseTo(mean(times('B')), 12);
  });

  test('a big gain over an engine taken apart takes two blocks, each in its set-up', () => {
    const plan = planPulls(question({ gainRatio: 0.06 }))!;
    expect(keysOf(plan.pulls)).toBe('AABB');
    expect(plan.reaches).toBe(true);
    expect(plan.stays).toEqual([
      { key: 'A', count: 2, takenApart: false },
      { key: 'B', count: 2, takenApart: true },
    ]);
    expect(new Set(plan.pulls.map(({ setUp }) => setUp)).size).toBe(2);
  });

  test('where set-up scatter or drift hides the gain, the baseline is fitted again', () => {
    const history = inventedHistory({ driftPerHour: spread(0.008, 20), setUp: spread(0.004, 20) });
    const plan = planPulls(question({ history, gainRatio: 0.03 }))!;
    expect(plan.reaches).toBe(true);
    expect(['return', 'twice']).toContain(plan.order);
    expect(plan.stays.filter(({ takenApart }) => takenApart).length).toBeGreaterThanOrEqual(2);
  });

  test('what no number of pulls can show is said, with the odds that can be had', () => {
    const plan = planPulls(question({ gainRatio: 0.004 }))!;
    expect(plan.reaches).toBe(false);
    expect(plan.oddsReached).toBeLessThan(0.8);
    expect(plan.floor).toBeGreaterThan(0.004);
    expect(plan.smallestDifference).toBeGreaterThanOrEqual(plan.floor);
  });

  test('goes on from what is on the brake, and counts what was made', () => {
    const made = madeOf('AA', 'first');
    const onTheBrake = { key: 'A', setUp: 'first', session: 'today', cell: 'cell 1', hours: 0.5 };
    const plan = planPulls(question({ made, onTheBrake, gainRatio: 0.06 }))!;
    expect(keysOf(plan.pulls)).toBe('BB');
    expect(plan.looksAt).toEqual([4]);
    expect(plan.made).toBeNull();
    const fromNothing = planPulls(question({ gainRatio: 0.06 }))!;
    expect(plan.smallestDifference).toBeCloseTo(fromNothing.smallestDifference, 10);
  });

  test('a third combination is in the plan and widens the band of both', () => {
    const three = [...KEPT, { key: 'C', takenApart: false }];
    const plan = planPulls(question({ combinations: three, gainRatio: 0.02 }))!;
    expect(new Set(keysOf(plan.pulls))).toEqual(new Set('ABC'));
    const pulls = madeOf('ABCCBA', 'one');
    const asked = { baseline: 'A', history: inventedHistory(), gainRatio: 0.02, odds: 0.8 };
    const two = pulls.filter(({ key }) => key !== 'C');
    expect(judgeDesign(pulls, [6], asked)!.smallest()).toBeGreaterThan(
      judgeDesign(two, [4], asked)!.smallest() * 0.9,
    );
  });
});

describe('what it says of them', () => {
  test('planned looks share the error: more looks, a larger smallest difference', () => {
    const pulls = madeOf('ABBAABBA', 'one');
    const asked = { baseline: 'A', history: inventedHistory(), gainRatio: 0.01, odds: 0.8 };
    const [one, two, three] = [[8], [4, 8], [4, 6, 8]].map((at) => judgeDesign(pulls, at, asked)!.smallest());
    expect(two).toBeGreaterThan(one!);
    expect(three).toBeGreaterThan(two!);
    const plan = planPulls(question({ combinations: KEPT, gainRatio: 0.01, looks: 2 }))!;
    expect(plan.looksAt).toHaveLength(2);
    expect(plan.looksAt.at(-1)).toBe(plan.pulls.length);
  });

  test('from three of each on more pulls make the smallest difference smaller, and it stays above the floor', () => {
    for (const combinations of [KEPT, question().combinations]) {
      const { curve, floor } = planPulls(question({ combinations }))!;
      const values = curve.map(({ smallestDifference }) => smallestDifference);
      expect(values).toHaveLength(8);
      // With the first repeats a slope begins to be taken out, and few repeats may set history aside: both cost before they help.
      for (let place = 3; place < values.length; place += 1)
        expect(values[place]).toBeLessThan(values[place - 1]!);
      expect(values.at(-1)).toBeGreaterThan(floor);
    }
  });

  test('one more pull of what is on the brake helps less than nothing made, never harms', () => {
    const made = [...madeOf('AA', 'first'), ...madeOf('BB', 'second', 3)];
    const onTheBrake = { key: 'B', setUp: 'second', session: 'today', cell: 'cell 1', hours: 3.5 };
    // A drift so small that a later pull does not confound more than it tells.
    const history = inventedHistory({ driftPerHour: spread(0.001, 6) });
    const plan = planPulls(question({ made, onTheBrake, history }))!;
    const more = plan.oneMore.find(({ key }) => key === 'B')!.smallestDifference!;
    expect(more).toBeLessThan(plan.made!);
    // A in a new set-up also takes out the drift and halves A's set-up scatter.
    expect(plan.oneMore.find(({ key }) => key === 'A')!.smallestDifference!).toBeLessThan(more);
  });
});
