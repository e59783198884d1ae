import { expect, test } from 'vitest';
import type { TrialPlan } from './model.ts';
import { planUnderKeys } from './plan-under-keys.ts';

const plan = (order: string, looksAt: number[]): TrialPlan => ({
  gainRatio: 0.02,
  odds: 0.8,
  pulls: [...order].map((key) => ({ key })),
  looksAt,
  stopCriteria: null,
  notes: 'hot oil',
});
const orderOf = (kept: TrialPlan | null) => kept?.pulls.map(({ key }) => key).join('');

test('pulls follow their combination to its new key, in their order; all else stays', () => {
  const turned = planUnderKeys(plan('ABBA', [2, 4]), (key) => ({ A: 'B', B: 'A' })[key]);
  expect(orderOf(turned)).toBe('BAAB');
  expect(turned).toMatchObject({ looksAt: [2, 4], gainRatio: 0.02, odds: 0.8, notes: 'hot oil' });
});

test('pulls of a combination that left are out, and a look comes after what is left of its pulls', () => {
  const without = planUnderKeys(plan('ACBBCA', [3, 6]), (key) => (key === 'C' ? undefined : key));
  expect(orderOf(without)).toBe('ABBA');
  // After A, C and B the look stood; A and B are left of them.
  expect(without!.looksAt).toEqual([2, 4]);
});

test('a look that would come before the first pull, or twice, is none; the last is after all', () => {
  const gone = (key: string) => (key === 'C' ? undefined : key);
  expect(planUnderKeys(plan('CCABAB', [2, 4, 6]), gone)!.looksAt).toEqual([2, 4]);
  expect(planUnderKeys(plan('ABCC', [2, 4]), gone)!.looksAt).toEqual([2]);
});

test('of a plan whose combinations all left nothing is left', () => {
  expect(planUnderKeys(plan('CC', [2]), () => undefined)).toBeNull();
});
