import { expect, test } from 'vitest';
import { boostPerSpeed } from './boost-and-slip.ts';

// 1 % of slip costs about 2.4 % of gauge boost at a pressure ratio of 1.7 (worked from head ~ speed squared, by hand:
// 7 · 1.7^(5/7) · (1.7^(2/7) - 1) / 0.7 = 7 · 1.4609 · 0.16371 / 0.7 = 2.39).
test('at a pressure ratio of 1.7', () => {
  expect(boostPerSpeed(1.7)).toBeCloseTo(2.39, 2);
});

test('towards no boost it is the square of speed', () => {
  expect(boostPerSpeed(1.0001)).toBeCloseTo(2, 3);
});

test('is the slope of boost over speed, by a small step of speed', () => {
  const boost = (speed: number) => (1 + 0.16371 * speed * speed) ** 3.5 - 1;
  const slope = Math.log(boost(1.0005) / boost(0.9995)) / Math.log(1.0005 / 0.9995);
  expect(boostPerSpeed(1 + boost(1))).toBeCloseTo(slope, 5);
});
