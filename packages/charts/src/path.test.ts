import { line } from 'd3-shape';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bandPath, linePath } from './path.ts';

const NONE = Number.NaN;

describe('linePath', () => {
  test('goes straight from point to point, breaks, and shows a point alone as a dash', () => {
    expect(linePath({ x: [0, 10.04, 20], y: [1.25, -2, 3] }, 2)).toBe('M0,1.3L10,-2L20,3');
    expect(linePath({ x: [0, 1, NONE, 4, 5], y: [0, 1, NONE, 4, 5] }, 2)).toBe('M0,0L1,1M4,4L5,5');
    expect(linePath({ x: [NONE, 5, NONE], y: [NONE, 7, NONE] }, 2)).toBe('M4,7L6,7');
    expect(linePath({ x: [], y: [] }, 2)).toBe('');
  });

  test('is the same as d3-shape writes', () => {
    const make = line().digits(1);
    const coordinate = fc.double({ min: -99_999, max: 99_999, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(coordinate, coordinate), { minLength: 2, maxLength: 40 }), (pairs) => {
        const path = linePath({ x: pairs.map(([x]) => x), y: pairs.map(([, y]) => y) }, 2);
        expect(path).toBe(make(pairs));
      }),
      { seed: 9 },
    );
  });
});

test('bandPath closes the tint and leaves gaps open', () => {
  const x = [0, 1, NONE, 3, 4];
  expect(bandPath({ x, y: [5, 5, NONE, 5, 5] }, { x, y: [2, 2, NONE, 2, 2] })).toBe(
    'M0,2L1,2L1,5L0,5ZM3,2L4,2L4,5L3,5Z',
  );
});
