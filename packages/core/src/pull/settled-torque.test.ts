import { expect, test } from 'vitest';
import { loadedEnd, settledStart } from './settled-torque.ts';

/** A sweep from 2000 to 6000 r/min that settles until 2150 and whose torque falls away from 5900 on. */
function sweep(rows: number) {
  const speed = Float64Array.from({ length: rows }, (_, row) => 2000 + (4000 * row) / (rows - 1));
  const torque = speed.map((rpm, row) => {
    const trend = 400 + rpm / 100 + 0.5 * Math.sin(7 * row);
    if (rpm < 2150) return trend * (0.5 + (0.5 * (rpm - 2000)) / 150);
    return rpm > 5900 ? trend * 0.6 : trend;
  });
  return { run: { fromRow: 0, toRow: rows - 1, direction: 'rising' as const, rate: 1 }, speed, torque };
}

test.each([400, 40_000, 400_000])('of %i rows the same speeds are cut off', (rows) => {
  const { run, speed, torque } = sweep(rows);
  const start = settledStart(run, speed, torque);
  const end = loadedEnd(run, speed, torque);
  // Within 2 % of the trend from 2144 r/min on; one row of the coarse log is 10 r/min.
  expect(Math.abs(speed[start!.row]! - 2147)).toBeLessThan(10);
  expect(Math.abs(speed[end!.row]! - 5900)).toBeLessThanOrEqual(10);
});
