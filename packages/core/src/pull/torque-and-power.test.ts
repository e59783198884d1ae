import { describe, expect, test } from 'vitest';
import { powerFromTorque, toInside } from '../quantity/index.ts';
import { torqueOfRows } from './torque-and-power.ts';

const speeds = Float64Array.from({ length: 30 }, (_, row) => 3000 + 100 * row);
const torque = speeds.map(() => 400);
const power = speeds.map((speed) => powerFromTorque(400, speed));

describe('torque and power', () => {
  test('torque from power is the way back', () => {
    const found = torqueOfRows(speeds, null, power);
    expect(found.source).toBe('power');
    for (const value of found.torque!) expect(value).toBeCloseTo(400, 9);
  });

  test('within half a per cent nothing is said', () => {
    expect(
      torqueOfRows(
        speeds,
        torque,
        power.map((value) => 1.004 * value),
      ).remarks,
    ).toEqual([]);
    expect(
      torqueOfRows(
        speeds,
        torque,
        power.map((value) => 1.006 * value),
      ).remarks,
    ).toHaveLength(1);
  });

  // What is written in one unit and read as another, by the unit table, which has its own outside checks.
  test.each([
    [
      'torque in lb-ft that was read as N·m',
      torque.map((value) => value / toInside(1, 'lb-ft', 'torque')),
      power,
    ],
    [
      'power in hp that was read as kW',
      torque,
      power.map((value) => (1000 * value) / toInside(1, 'hp', 'power')),
    ],
    [
      'power in metric horsepower that was read as kW',
      torque,
      power.map((value) => (1000 * value) / toInside(1, 'PS', 'power')),
    ],
  ])('names %s', (says, asTorque, asPower) => {
    const [one] = torqueOfRows(speeds, asTorque, asPower).remarks;
    expect(one?.code).toBe('unit-mix');
    expect(one?.message).toContain(says);
  });

  test('a ratio that no unit explains is told as it is', () => {
    const [one] = torqueOfRows(
      speeds,
      torque,
      power.map((value) => 1.04 * value),
    ).remarks;
    expect(one?.code).toBe('power-is-not-torque-times-speed');
    expect(one?.message).toContain('1.040 times');
  });
});
