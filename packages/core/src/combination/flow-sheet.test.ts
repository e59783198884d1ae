import { describe, expect, test } from 'vitest';
import { FOOT, INCH, MINUTE, toInside } from '../quantity/index.ts';
import { curtainCoefficient, flowAtPressure, flowPoints, idealSpeed } from './flow-sheet.ts';
import { remarksOnSheet } from './remarks-on-sheet.ts';
import { testSheet } from './test-sheet.ts';

const INCHES_28 = toInside(28, 'inH2O', 'pressureDifference');
const CFM = FOOT ** 3 / MINUTE;

const heads = (flowIntake: Record<string, unknown>, more: Record<string, unknown> = {}) =>
  testSheet({ heads: { intakeValveDiameter: '2 in', ...more, flowIntake } });

describe('physics of a bench, against figures of the trade (common practice, no source)', () => {
  test('28 against 10 and 25 inches of water: 1.673 and 1.058 times', () => {
    expect(flowAtPressure(1, 10, 28)).toBeCloseTo(1.673, 3);
    expect(flowAtPressure(1, 25, 28)).toBeCloseTo(1.058, 3);
  });

  test('at 28 inches of water the ideal speed is 353 to 355 ft/s, 147 to 148 cfm through a square inch', () => {
    expect(idealSpeed(INCHES_28) / FOOT).toBeGreaterThan(353);
    expect(idealSpeed(INCHES_28) / FOOT).toBeLessThan(355);
    const perSquareInch = (idealSpeed(INCHES_28) * INCH ** 2) / CFM;
    expect(perSquareInch).toBeGreaterThan(147);
    expect(perSquareInch).toBeLessThan(148);
  });

  test('the curtain: Q / (148 π d L) in inches and cfm, within the rounding of 148', () => {
    const valve = { diameter: 2.02 * INCH, lift: 0.3 * INCH, count: 1 };
    const byTrade = 195 / (148 * Math.PI * 2.02 * 0.3);
    expect(curtainCoefficient(195 * CFM, INCHES_28, valve)).toBeCloseTo(byTrade, 2);
    expect(curtainCoefficient(195 * CFM, INCHES_28, { ...valve, count: 2 })).toBeCloseTo(byTrade / 2, 2);
  });
});

describe('a flow sheet', () => {
  const points = 'lift in, flow cfm\n0.1, 66\n0.3, 195\n0.5, 250';

  test('gives flow at 28 inches of water and the coefficient of each point', () => {
    const [first, , last] = flowPoints(heads({ testPressure: '10 inH2O', points }), 'flowIntake');
    expect(first!.flowAtCommonPressure! / CFM).toBeCloseTo(66 * Math.sqrt(2.8), 6);
    expect(last!.liftToDiameter).toBeCloseTo(0.25, 12);
    expect(last!.coefficient).toBeCloseTo((250 * Math.sqrt(2.8)) / (147.4 * Math.PI * 2 * 0.5), 2);
  });

  test('counts the intake valves of a cylinder', () => {
    const sheet = (valvesPerCylinder: string) =>
      flowPoints(heads({ testPressure: '28 inH2O', points }, { valvesPerCylinder }), 'flowIntake')[0]!;
    expect(sheet('4').coefficient).toBeCloseTo(sheet('2').coefficient! / 2, 12);
    expect(sheet('5').coefficient).toBeCloseTo(sheet('2').coefficient! / 3, 12);
  });

  test('without pressure or valve there is no coefficient, and nothing is guessed', () => {
    const unknown = flowPoints(heads({ testPressure: 'unknown', points }), 'flowIntake')[0]!;
    expect(unknown).toMatchObject({ flowAtCommonPressure: null, coefficient: null });
    expect(flowPoints(testSheet({ heads: { flowIntake: 'unknown' } }), 'flowIntake')).toEqual([]);
  });

  test('more than a curtain lets through is told, and kept', () => {
    const told = (testPressure: string) =>
      remarksOnSheet(heads({ testPressure, points })).filter(({ code }) => code === 'flow-beyond-curtain');
    expect(told('28 inH2O')).toEqual([]);
    expect(told('10 inH2O')[0]!.message).toMatch(/^heads\.flowIntake: at \d.* intake flow is (0\.[89]|1\.)/);
  });
});
