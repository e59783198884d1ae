import { describe, expect, test } from 'vitest';
import { readStartSearch, readTrialSearch } from './search.ts';

describe('address of a trial', () => {
  test('standard and window are kept, as text or as numbers', () => {
    expect(readTrialSearch({ correction: 'sae-j1349', from: '4000', to: 6500 })).toEqual({
      correction: 'sae-j1349',
      from: 4000,
      to: 6500,
    });
  });

  test.each([
    [{ correction: 'no-such-standard' }],
    [{ from: 4000 }],
    [{ from: 6500, to: 4000 }],
    [{ from: 'abc', to: 6500 }],
    [{ from: -1, to: 6500 }],
    [{ correction: ['sae-j1349'] }],
  ])('what cannot be meant is left out: %j', (search) => {
    expect(readTrialSearch(search)).toEqual({});
  });
});

test('pulls to start with must be a text', () => {
  expect(readStartSearch({ pulls: 'a,b' })).toEqual({ pulls: 'a,b' });
  expect(readStartSearch({ pulls: { a: 1 } })).toEqual({});
});
