import { expect, test } from 'vitest';
import type { Comparison } from '../compare/index.ts';
import type { Prediction } from '../shop/index.ts';
import { predictionsOfTrial } from './predictions-of-trial.ts';

const foretold = (low: number, high: number): Prediction => ({
  id: 'p',
  trialId: 't',
  key: 'B',
  what: 'highestBoost',
  value: (low + high) / 2,
  low,
  high,
  basis: 'a match',
  at: '2026-05-04T12:00:00Z',
});

/** Only what a prediction of boost is held against. */
function comparison(boost: number[] | null): Pick<Comparison, 'combinations' | 'gains'> {
  const channels = new Map(
    boost === null ? [] : [['boost' as const, { mean: Float64Array.from(boost), pulls: [] }]],
  );
  return {
    combinations: [{ key: 'B', channels } as unknown as Comparison['combinations'][number]],
    gains: [],
  };
}

test('highest boost is held against the highest of the mean curve, empty bins left out', () => {
  const measured = comparison([40e3, Number.NaN, 71e3, 69e3]);
  expect(predictionsOfTrial([foretold(68e3, 73e3)], measured)).toMatchObject([
    { measured: 71e3, inside: true },
  ]);
  expect(predictionsOfTrial([foretold(72e3, 73e3)], measured)).toMatchObject([
    { measured: 71e3, inside: false },
  ]);
});

test('without a logged boost, or before the pull, there is nothing to hold it against', () => {
  for (const nothing of [comparison(null), comparison([Number.NaN]), null])
    expect(predictionsOfTrial([foretold(1, 2)], nothing)).toMatchObject([{ measured: null, inside: null }]);
});
