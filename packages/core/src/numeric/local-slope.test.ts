import fc from 'fast-check';
import { expect, test } from 'vitest';
import { localSlope, slopeOfRows } from './local-slope.ts';

test('the slopes of a wide window, by running sums, are those of each window by itself', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 40, max: 300 }),
      fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 10, maxLength: 40 }),
      (halfWindow, jitter) => {
        // Far from zero, as a clock is after hours and a speed always; longer than running sums are carried on.
        const rows = 5000;
        const x = Float64Array.from({ length: rows }, (_, row) => 40_000 + row / 1000);
        const y = x.map((_, row) =>
          row % 97 === 5 ? Number.NaN : 2000 + row / 2 + jitter[row % jitter.length]! * Math.sin(row),
        );
        const slopes = localSlope(x, y, halfWindow);
        for (const row of [0, 1, 700, 4095, 4096, 4097, rows - 1]) {
          const alone = slopeOfRows(
            x,
            y,
            Math.max(0, row - halfWindow),
            Math.min(rows - 1, row + halfWindow),
          );
          // 500 r/min/s; rounding may take a millionth of it.
          expect(Math.abs(slopes[row]! - alone)).toBeLessThan(5e-4);
        }
      },
    ),
    { seed: 20261125, numRuns: 20 },
  );
});
