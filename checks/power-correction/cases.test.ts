/**
 * Seven atmospheres, worked outside this code from the formulas of the standards with ASHRAE's saturation pressure, to six decimals.
 * Formulas: SAE J1349 of June 1990 as quoted in a public forum post (its mistakes are in disagreements.test.ts); SAE J607 practice from a
 * mailing-list message of 1 March 1995; ISO 1585 seen in a public code snippet; DIN 70020 from memory.
 * Such numbers prove the arithmetic, not that the standard says so: none of the standards' own texts was at hand.
 * Tolerance 1e-6: half of the last decimal, and as much again for rounding.
 */
import { airState, CORRECTIONS, type CorrectionId } from '@pullbook/core/air';
import { absolutePressure, temperature, toInside } from '@pullbook/core/quantity';
import { describe, expect, test } from 'vitest';

interface Case {
  name: string;
  celsius: number;
  pascal: number;
  relativeHumidity: number;
  vapourPascal: number;
  factors: Record<Exclude<CorrectionId, 'observed'>, number>;
}

const CASES: Case[] = [
  caseOf('A', [25, 99_000, 0, 0], [1, 1.040091, 1, 1.031926]),
  caseOf('B', [25, 100_000, 0.3156, 1000.204718], [1.000002, 1.040093, 1.000002, 1.021607]),
  caseOf('C', [35, 98_000, 0.6, 3376.691668], [1.075123, 1.106298, 1.076875, 1.059802]),
  caseOf('D', [10, 102_000, 0.3, 368.398583], [0.940143, 0.987344, 0.939442, 0.976042]),
  caseOf('E', [15.5556, 101_325, 0, 0], [0.954507, 1, 0.953916, 0.992142]),
  caseOf('F', [30, 90_000, 0.5, 2123.015122], [1.160464, 1.181524, 1.165327, 1.144602]),
  caseOf('G', [20, 101_300, 0, 0], [0.963493, 1.007916, 0.96299, 1]),
];

describe.each(CASES)('case $name', (atmosphere) => {
  const air = airOf(atmosphere);

  test('vapour pressure', () => expect(air.vapourPressure).toBeCloseTo(atmosphere.vapourPascal, 3));

  test.each(Object.entries(atmosphere.factors))('%s', (id, expected) => {
    const factor = CORRECTIONS[id as CorrectionId].factor(air);
    expect(Math.abs(factor - expected)).toBeLessThan(1e-6);
  });

  test('observed', () => expect(CORRECTIONS.observed.factor(air)).toBe(1));
});

describe('each standard is exactly 1 in its own reference air', () => {
  test.each<[CorrectionId, number, number]>([
    ['sae-j1349', toInside(25, '°C', 'temperature'), 99_000],
    ['iso-1585', toInside(25, '°C', 'temperature'), 99_000],
    ['sae-j607', toInside(60, '°F', 'temperature'), 101_325],
    ['din-70020', toInside(20, '°C', 'temperature'), 101_300],
  ])('%s', (id, kelvin, pascal) => {
    const reading = airState({
      pressure: absolutePressure(pascal),
      temperature: temperature(kelvin),
      humidity: { route: 'relativeHumidity', ratio: 0 },
      altitude: null,
    });
    if (!reading.ok) throw new Error(reading.remarks[0]?.message);
    expect(CORRECTIONS[id].factor(reading.value)).toBeCloseTo(1, 14);
  });
});

/** Limits from memory of ISO 1585 and UN R85 (factor, 288 to 308 K, 80 to 110 kPa dry) and, weaker, of SAE J1349 (15 to 35 °C, 90 to 105 kPa dry). */
describe('inside or outside of the standard', () => {
  test.each<[string, CorrectionId, boolean]>([
    ['A', 'sae-j1349', true],
    ['A', 'iso-1585', true],
    ['C', 'sae-j1349', true], // 35 °C is still inside
    ['C', 'iso-1585', false], // factor above 1.07
    ['D', 'sae-j1349', false], // 10 °C
    ['D', 'iso-1585', false], // 10 °C, though the factor is inside
    ['E', 'iso-1585', true],
    ['F', 'sae-j1349', false], // below 90 kPa dry
    ['F', 'iso-1585', false],
  ])('case %s, %s: %s', (name, id, inside) => {
    const air = airOf(CASES.find((atmosphere) => atmosphere.name === name)!);
    const standard = CORRECTIONS[id];
    expect(standard.outsideValidity(air, standard.factor(air)).length === 0).toBe(inside);
  });
});

function caseOf(
  name: string,
  [celsius, pascal, relativeHumidity, vapourPascal]: [number, number, number, number],
  [j1349, j607, iso1585, din70020]: [number, number, number, number],
): Case {
  const factors = { 'sae-j1349': j1349, 'sae-j607': j607, 'iso-1585': iso1585, 'din-70020': din70020 };
  return { name, celsius, pascal, relativeHumidity, vapourPascal, factors };
}

function airOf(atmosphere: Case) {
  const reading = airState({
    pressure: absolutePressure(atmosphere.pascal),
    temperature: temperature(toInside(atmosphere.celsius, '°C', 'temperature')),
    humidity: { route: 'relativeHumidity', ratio: atmosphere.relativeHumidity },
    altitude: null,
  });
  if (!reading.ok) throw new Error(reading.remarks[0]?.message);
  return reading.value;
}
