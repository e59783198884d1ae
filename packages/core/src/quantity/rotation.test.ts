import { describe, expect, test } from 'vitest';
import { fromInside, toInside } from './convert.ts';
import { inertiaTorque, powerFromTorque, torqueFromPower } from './rotation.ts';

test('horsepower is lb-ft × r/min / 5252.113 (33 000 / 2π, by definition of the horsepower)', () => {
  const power = fromInside(powerFromTorque(toInside(400, 'lb-ft'), 5000), 'hp');
  expect(power).toBeCloseTo((400 * 5000 * 2 * Math.PI) / 33_000, 9);
});

test('torque from power turns power from torque round; at standstill it is not known', () => {
  expect(torqueFromPower(powerFromTorque(321.5, 4321), 4321)).toBeCloseTo(321.5, 12);
  expect(torqueFromPower(1000, 0)).toBeNaN();
});

/** T = I 2π/60 dn/dt worked by hand for three inertias (rows: kg·m²; columns: 100, 300, 600, 1000 r/min per s), in lb-ft. */
describe('torque hidden by inertia', () => {
  test.each([
    [0.25, 1.9, 5.8, 11.6, 19],
    [0.4, 3.1, 9.3, 18.5, 31],
    [0.6, 4.6, 13.9, 27.8, 46],
  ])('%s kg·m²', (inertia, ...expected) => {
    [100, 300, 600, 1000].forEach((rate, column) => {
      const tolerance = rate === 1000 ? 0.5 : 0.05;
      expect(
        Math.abs(fromInside(inertiaTorque(inertia, rate), 'lb-ft') - expected[column]!),
      ).toBeLessThanOrEqual(tolerance);
    });
  });

  test('a falling sweep gives it back', () => {
    expect(inertiaTorque(0.4, -300)).toBe(-inertiaTorque(0.4, 300));
  });
});
