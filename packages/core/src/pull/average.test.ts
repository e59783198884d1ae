import { describe, expect, test } from 'vitest';
import { averageOver } from './average.ts';
import type { GriddedCurve } from './model.ts';

function curve(kindOfRows: GriddedCurve['kindOfRows'], speeds: number[], values: number[]): GriddedCurve {
  return {
    kindOfRows,
    binWidthRpm: speeds[1]! - speeds[0]!,
    engineSpeedRpm: Float64Array.from(speeds),
    count: new Float64Array(speeds.length).fill(3),
    channels: new Map([['torque', Float64Array.from(values)]]),
  };
}

describe('average over a window', () => {
  test('of bins is their mean, empty ones left out', () => {
    const bins = curve('samples', [3000, 3100, 3200, 3300], [1, 2, Number.NaN, 6]);
    expect(averageOver(bins, 'torque', [3000, 3300])).toBe(3);
  });

  test('of settled points is the integral of the lines between them, not the mean of unevenly spaced rows', () => {
    const points = curve('points', [3000, 3100, 3500], [0, 100, 100]);
    expect(averageOver(points, 'torque', [3000, 3500])).toBeCloseTo((100 * 50 + 400 * 100) / 500, 9);
    expect(averageOver(points, 'torque', [3050, 3100])).toBeCloseTo(75, 9);
  });

  test('leaves out a stretch between rows that are too far apart to be joined', () => {
    const points = curve('points', [3000, 3500, 5000, 5500], [10, 10, 90, 90]);
    expect(averageOver(points, 'torque', [3000, 5500])).toBeCloseTo(50, 9);
  });

  test('is not given where the curve does not reach', () => {
    const points = curve('points', [3000, 3500], [10, 10]);
    expect(averageOver(points, 'torque', [2500, 3500])).toBeNull();
    expect(averageOver(points, 'lambda', [3000, 3500])).toBeNull();
  });
});
