import {
  beltClassFor,
  type Drive,
  driveFigures,
  gripRatio,
  impellerSpeed,
  openBeltLength,
  tipSpeedOf,
  wrapOfPulleys,
} from '@pullbook/core/airpath';
import { describe, expect, test } from 'vitest';

const degrees = (radians: number) => (radians * 180) / Math.PI;
const radians = (degree: number) => (degree * Math.PI) / 180;
const INCH = 0.0254;
const HORSEPOWER = 745.69987;
const POUND_FORCE = 4.4482216;

const DRIVE: Drive = {
  kind: 'ribbed belt',
  pulleyRatio: 2.5,
  stepUp: 3.6,
  slip: 0.02,
  mechanicalEfficiency: 0.95,
  crankPulleyDiameter: 7.5 * INCH,
  blowerPulleyDiameter: 3 * INCH,
  wrapAngle: radians(170),
  ribs: 8,
  maximumImpellerSpeedRpm: 62_000,
  engineSpeedLimitRpm: 6800,
  overRevMarginRpm: 200,
};

describe('belts, worked outside this code from textbook formulas', () => {
  test('wrap of the small of two pulleys of 180 and 75 mm, 260 mm apart', () => {
    expect(degrees(wrapOfPulleys(0.18, 0.075, 0.26))).toBeCloseTo(156.7011, 3);
  });
  test('length of the open belt about them', () => {
    expect(openBeltLength(0.18, 0.075, 0.26)).toBeCloseTo(0.9311905, 6);
    // The usual approximation of the textbooks is 0.04 mm off: the exact one is meant.
    expect(openBeltLength(0.18, 0.075, 0.26)).not.toBeCloseTo(0.931154, 5);
  });
  test('Euler and Eytelwein: flat, 0.3 over half a turn; V of 36°, 0.3 over 150°', () => {
    expect(gripRatio({ friction: 0.3, wrap: Math.PI })).toBeCloseTo(2.566332, 6);
    expect(gripRatio({ friction: 0.3, wrap: radians(150), groove: radians(36) })).toBeCloseTo(12.69999, 4);
  });
  test('Wentzell, Machine Design, example 14.2 (from a solution sheet): 6 and 4 in, 54 in long, 19.12 in apart', () => {
    expect(openBeltLength(6 * INCH, 4 * INCH, 19.12 * INCH) / INCH).toBeCloseTo(54, 1);
    expect(degrees(wrapOfPulleys(6, 4, 19.12))).toBeCloseTo(174.01, 1);
    // 1800 r/min on 4 in: 1884.96 ft/min
    expect((tipSpeedOf(4 * INCH, 1800) * 60) / 0.3048).toBeCloseTo(1884.96, 1);
  });
  test('pulleys that would overlap have no wrap', () => {
    expect(wrapOfPulleys(0.4, 0.1, 0.1)).toBeNaN();
  });
});

test('tip speed: 0.5 m at 290 rev/s is 455.53 m/s (Saravanamuttoo, example 4.1, from memory)', () => {
  expect(tipSpeedOf(0.5, 290 * 60)).toBeCloseTo(455.531, 3);
});

test('impeller speed is engine speed x pulley ratio x step-up x (1 - slip); teeth do not slip', () => {
  expect(impellerSpeed(DRIVE, 6000)).toBeCloseTo(6000 * 9 * 0.98, 9);
  expect(impellerSpeed({ ...DRIVE, kind: 'toothed belt' }, 6000)).toBeCloseTo(54_000, 9);
});

describe('common practice, no source', () => {
  test.each([
    [60, 155],
    [80, 207],
    [120, 310],
  ])('%d hp at 6500 r/min on a crank pulley of 7.5 in pulls %d lbf', (horsepower, pounds) => {
    const { beltPull } = driveFigures(DRIVE, {
      engineSpeedRpm: 6500,
      drivePower: horsepower * HORSEPOWER,
      wheelExitDiameter: null,
    });
    expect(Math.round(beltPull! / POUND_FORCE)).toBe(pounds);
  });
  test.each([
    [140, 9],
    [160, 12],
    [180, 17],
    [200, 23],
  ])('an effective friction of 0.9 holds %d° of wrap to a ratio of %d', (wrap, ratio) => {
    expect(Math.round(gripRatio({ friction: 0.9, wrap: radians(wrap) }))).toBe(ratio);
  });
  test('ribs for 42, 70 and 100 hp of drive; beyond 110 hp teeth or gears', () => {
    const ribs = [42, 70, 100, 130].map((hp) => beltClassFor(hp * HORSEPOWER, 8).ribsNeeded);
    expect(ribs).toEqual([6, 8, 10, null]);
  });
});

describe('a bigger crank pulley at the same ratio', () => {
  const at = { engineSpeedRpm: 6500, drivePower: 50_000, wheelExitDiameter: 0.15 };
  const small = driveFigures(DRIVE, at);
  const big = driveFigures(
    { ...DRIVE, crankPulleyDiameter: 8.5 * INCH, blowerPulleyDiameter: 3.4 * INCH },
    at,
  );
  test('turns the impeller as fast and pulls less, in proportion', () => {
    expect(big.impellerSpeedRpm).toBe(small.impellerSpeedRpm);
    expect(big.beltPull! / small.beltPull!).toBeCloseTo(7.5 / 8.5, 12);
    expect(big.gripUsed! / small.gripUsed!).toBeCloseTo(7.5 / 8.5, 12);
  });
  test('pull times belt speed is the power carried', () => {
    for (const { beltPull, beltSpeed } of [small, big]) expect(beltPull! * beltSpeed!).toBeCloseTo(50_000, 6);
  });
});

describe('grip and limit', () => {
  const at = { engineSpeedRpm: 6500, drivePower: 50_000, wheelExitDiameter: 0.15 };
  test('less wrap uses more of the grip', () => {
    const used = [180, 150, 120].map(
      (wrap) => driveFigures({ ...DRIVE, wrapAngle: radians(wrap) }, at).gripUsed!,
    );
    expect(used[0]).toBeLessThan(used[1]!);
    expect(used[1]).toBeLessThan(used[2]!);
  });
  test('the belt at hand uses all of its grip at the power its ribs are told for', () => {
    const { most } = beltClassFor(0, 8);
    expect(driveFigures(DRIVE, { ...at, drivePower: most! }).gripUsed).toBeCloseTo(1, 9);
  });
  test('the highest impeller speed is taken without slip, at the limit and its margin', () => {
    const { highestImpellerSpeedRpm, limitUsed } = driveFigures(DRIVE, at);
    expect(highestImpellerSpeedRpm).toBeCloseTo(7000 * 9, 9);
    expect(limitUsed).toBeCloseTo(63_000 / 62_000, 9);
  });
  test('what is not known stays so, and teeth have no grip to use up', () => {
    const bare = driveFigures(
      { ...DRIVE, wrapAngle: null, crankPulleyDiameter: null, maximumImpellerSpeedRpm: null },
      { ...at, wheelExitDiameter: null },
    );
    expect(bare).toMatchObject({
      beltPull: null,
      gripRatio: null,
      gripUsed: null,
      limitUsed: null,
      tipSpeed: null,
    });
    expect(driveFigures({ ...DRIVE, kind: 'toothed belt' }, at)).toMatchObject({
      gripUsed: null,
      belt: null,
    });
  });
});
