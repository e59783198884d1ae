import { remark } from '@pullbook/core/remark';
import { expect, test } from 'vitest';
import type { MatchBundle } from '../match-model.ts';
import { noMatchLines } from './no-match.ts';
import { inventedBundle } from './test-bundle.ts';

const reason = remark('note', 'no-pulleys', 'There are no pulleys on the sheet.');
const options = { units: 'us', decimalMark: '.' } as const;
const textsOf = (bundle: Partial<MatchBundle>) =>
  noMatchLines(inventedBundle({ combinations: [], ...bundle }), options).map(({ text }) => text);

test('of one combination the reason is said once', () => {
  expect(textsOf({ trialId: null, silent: [reason], left: [{ key: 'A', name: 'base', reason }] })).toEqual([
    'There are no pulleys on the sheet.',
  ]);
});

test('of a trial each reason stands with its combination, and what holds for all before them', () => {
  const all = remark('note', 'no-baseline', 'The engine was never pulled without the supercharger.');
  const left = [
    { key: 'A', name: 'base', reason },
    { key: 'B', name: 'longer', reason },
  ];
  expect(textsOf({ trialId: 't', silent: [all, reason, reason], left })).toEqual([
    'The engine was never pulled without the supercharger.',
    'A, base: There are no pulleys on the sheet.',
    'B, longer: There are no pulleys on the sheet.',
  ]);
});
