import { expect, test } from 'vitest';
import type { PullArray } from './model.ts';
import { windowOfArrays } from './window-of-arrays.ts';

const over = (engineSpeedRpm: number[], power: number[]): PullArray => ({
  engineSpeedRpm,
  power,
  group: 'A',
  setUp: null,
  session: null,
  cell: null,
  hours: null,
});
const every = (from: number, to: number, step: number) =>
  Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, row) => from + step * row);
const line = (speeds: number[]) =>
  over(
    speeds,
    speeds.map((speed) => 50 * speed),
  );

function shared(pulls: PullArray[], asked: [number, number] | null = null) {
  const result = windowOfArrays(pulls, asked);
  if (!result.ok) throw new Error(result.remarks[0]!.message);
  return result.value;
}

test('the rows of the widest grid, straight lines between those of the others', () => {
  const [coarse, fine] = [line(every(3000, 6000, 250)), line(every(2510, 5810, 50))];
  for (const pulls of [
    [coarse, fine],
    [fine, coarse],
  ]) {
    const on = shared(pulls);
    expect([...on.engineSpeedRpm]).toEqual(every(3000, 5750, 250));
    expect(on.full).toHaveLength(12);
    for (const values of on.logPower)
      values.forEach((log, node) => {
        expect(log).toBeCloseTo(Math.log(50 * on.engineSpeedRpm[node]!), 12);
      });
  }
});

test('the mean is of power, not of its logarithm', () => {
  const on = shared([over([3000, 4000], [100, 300])]);
  expect(on.logMean[0]).toBeCloseTo(Math.log(200), 12);
});

test('a hole of one is left out for all, and ends are drawn in to speeds where all have a figure', () => {
  const speeds = every(3000, 4000, 100);
  const holed = line(speeds);
  (holed.power as number[])[0] = Number.NaN;
  (holed.power as number[])[5] = 0;
  (holed.power as number[])[10] = Number.POSITIVE_INFINITY;
  const on = shared([holed, line(speeds)]);
  expect([...on.engineSpeedRpm]).toEqual(every(3100, 3900, 100));
  expect(on.logPower[1]![4]).toBeNaN();
  expect(on.full).not.toContain(4);
  expect(on.full).toHaveLength(8);
});

test('a window asked for is kept to, and refused in words where nothing is in it', () => {
  const pulls = [line(every(3000, 6000, 100)), line(every(3500, 6500, 100))];
  expect([...shared(pulls, [4000, 4300]).engineSpeedRpm]).toEqual([4000, 4100, 4200, 4300]);
  const refused = windowOfArrays(pulls, [7000, 8000]);
  expect(refused.ok).toBe(false);
  expect(refused.remarks[0]!.message).toContain('7,000-8,000 rpm');
  expect(refused.remarks[0]!.message).toContain('3,500-6,000 rpm');
});

test('one speed is enough; arrays of unlike length are a broken promise', () => {
  expect(shared([line([4000]), line([4000])]).full).toEqual([0]);
  expect(() => windowOfArrays([over([3000, 3100], [1])], null)).toThrow('2 engine speeds but 1');
});
