import { type MatchCase, matchBands } from '@pullbook/core/airpath';
import { expect, test } from 'vitest';
import { bandsAtHand } from './bands-at-hand.ts';
import { inventedBundle } from './test-bundle.ts';

const [a, b] = inventedBundle().combinations.map(({ input, spread }): MatchCase => ({ input, spread })) as [
  MatchCase,
  MatchCase,
];
const tried: MatchCase = { ...a, input: { ...a.input, drive: { ...a.input.drive, pulleyRatio: 2.1 } } };
const bands = matchBands([a, b], { draws: 20, seed: 1 });

test('what nothing was changed of keeps its band; what is tried has none', () => {
  const kept = bandsAtHand({ cases: [a, b], bands }, [a, tried, b]);
  expect(kept?.cases).toEqual([bands.cases[0], null, bands.cases[1]]);
  expect(kept?.differences).toEqual([bands.differences[0], null, bands.differences[1]]);
});

test('held against another first one, no difference is still true', () => {
  const kept = bandsAtHand({ cases: [a, b], bands }, [b, tried, a]);
  expect(kept?.cases).toEqual([bands.cases[1], null, bands.cases[0]]);
  expect(kept?.differences).toEqual([null, null, null]);
});

test('none came, none is at hand', () => {
  expect(bandsAtHand(null, [a])).toBeNull();
});
