import { expect, test } from 'vitest';
import { inventedHistory, spread } from '../scatter/history.testing.ts';
import { baselineGuard, type GuardQuestion } from './baseline-guard.ts';
import type { DesignedPull } from './designed-pull.ts';

const pulled = (key: string, count: number): DesignedPull[] =>
  Array.from({ length: count }, (_, place) => ({
    key,
    setUp: key,
    session: 'today',
    cell: 'cell 1',
    hours: place / 4,
  }));

const guarded = (changes: Partial<GuardQuestion> = {}) =>
  baselineGuard({
    history: inventedHistory({ driftPerHour: spread(0.001, 6) }),
    combinations: [
      { key: 'A', name: 'base cam', takenApart: false },
      { key: 'B', name: 'longer cam', takenApart: true },
    ],
    made: pulled('A', 2),
    onTheBrake: { key: 'A', setUp: 'A', session: 'today', cell: 'cell 1', hours: 0.5 },
    planned: new Map([
      ['A', 4],
      ['B', 4],
    ]),
    gainRatio: 0.05,
    odds: 0.8,
    pace: { minutesPerPull: 15, hoursTakenApart: 3, hoursKept: 0.25 },
    baselinePower: 300_000,
    ...changes,
  });

test('fewer pulls than planned: says what is there, what is lost and what one more gives', () => {
  const risk = guarded()!;
  expect(risk).toMatchObject({ key: 'A', counted: 2, planned: 4 });
  expect(risk.smallestWithOneMore).toBeLessThan(risk.smallestNow);
  expect(risk.remark.message).toMatch(/^You are about to lose the baseline: one more pull\?/);
  expect(risk.remark.message).toContain('2 counted pulls of 4 planned');
  expect(risk.remark.message).toContain(`${(risk.smallestNow * 300).toFixed(0)} kW`);
});

test('as many as planned, but the asked gain would not be seen', () => {
  const planned = new Map([['A', 2]]);
  expect(guarded({ planned, gainRatio: 0.01 })).not.toBeNull();
  expect(guarded({ planned, gainRatio: 0.05 })).toBeNull();
});

test('without a plan it speaks where the gain that matters would not be seen', () => {
  expect(guarded({ planned: null, gainRatio: 0.01 })!.planned).toBeNull();
  expect(guarded({ planned: null, gainRatio: 0.05 })).toBeNull();
});

test('silent where nothing is lost: another is on the brake, all are pulled, the baseline was never pulled', () => {
  const onTheBrake = { key: 'B', setUp: 'B', session: 'today', cell: 'cell 1', hours: 4 };
  expect(guarded({ onTheBrake })).toBeNull();
  expect(guarded({ made: [...pulled('A', 2), ...pulled('B', 1)] })).toBeNull();
  expect(guarded({ made: [] })).toBeNull();
});
