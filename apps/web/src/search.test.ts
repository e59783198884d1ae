import { describe, expect, test } from 'vitest';
import {
  readCombinationsSearch,
  readPullSearch,
  readStartSearch,
  readTrialSearch,
  shownRange,
} from './search.ts';

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

describe('what a chart shows', () => {
  test('zoom and what is hidden are kept', () => {
    expect(readTrialSearch({ low: '3000', high: 5000.5, hide: 'A,b1' })).toEqual({
      low: 3000,
      high: 5000.5,
      hide: 'A,b1',
    });
    expect(shownRange(readTrialSearch({ low: 3000, high: 5000 }))).toEqual([3000, 5000]);
    expect(shownRange(readTrialSearch({ low: 5000, high: 3000 }))).toBeNull();
    expect(readTrialSearch({ low: 'x', high: 3, hide: ['A'] })).toEqual({});
  });

  test('a recording over speed, zoomed, with channels of its own', () => {
    const search = { over: 'speed', recordedLow: -1, recordedHigh: 2.5, channels: 4 };
    expect(readPullSearch(search)).toEqual({ ...search, channels: '4' });
    expect(readPullSearch({ over: 'row', recordedLow: 2, channels: '' })).toEqual({});
  });
});

test('pulls to start with must be a text', () => {
  expect(readStartSearch({ pulls: 'a,b' })).toEqual({ pulls: 'a,b' });
  expect(readStartSearch({ pulls: { a: 1 } })).toEqual({});
});

test('address of the combinations: a name that looks like a number stays a text, a page is a whole one above the first', () => {
  expect(readCombinationsSearch({ find: 350, engine: 'e1', page: '2' })).toEqual({
    find: '350',
    engine: 'e1',
    page: 2,
  });
  expect(readCombinationsSearch({ find: ' ', engine: ['e1'], page: '1' })).toEqual({});
  expect(readCombinationsSearch({ page: 1.5 })).toEqual({});
});
