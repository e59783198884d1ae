import { describe, expect, test } from 'vitest';
import { absolutePressure, temperature } from '../quantity/index.ts';
import { type CorrectionInput, correctionOf } from './correction.ts';
import { REFERENCE_WEATHER } from './invented-pull.testing.ts';

/** 95 kPa dry, 30 °C: a factor well over 1. */
const thinAir = {
  ...REFERENCE_WEATHER,
  pressure: absolutePressure(95_000),
  temperature: temperature(303.15),
};

const of = (changes: Partial<CorrectionInput>) =>
  correctionOf({
    asked: 'sae-j1349',
    carried: { standard: 'observed', factor: 1 },
    weather: thinAir,
    boosted: false,
    ...changes,
  });

const codes = (found: ReturnType<typeof correctionOf>) => found.remarks.map((one) => one.code);

describe('bringing a pull to a standard', () => {
  test('observed figures take the factor of their weather', () => {
    const found = of({});
    expect(found.applied).toMatchObject({ standard: 'sae-j1349', reached: true });
    // 1.180 (99/95) √(303/298) - 0.180 (SAE J1349, the factor as published; arithmetic here)
    expect(found.multiplier).toBeCloseTo(1.18 * (99 / 95) * Math.sqrt(303 / 298) - 0.18, 3);
    expect(found.applied.factor).toBe(found.multiplier);
  });

  test('a carried factor is undone first', () => {
    const found = of({ carried: { standard: 'sae-j607', factor: 1.09 } });
    expect(found.multiplier * 1.09).toBeCloseTo(of({}).multiplier, 12);
  });

  test('to observed and back is where it began', () => {
    const carried = { standard: 'din-70020', factor: 1.031 } as const;
    expect(of({ asked: 'observed', carried }).multiplier).toBeCloseTo(1 / 1.031, 12);
    expect(of({ asked: 'observed', carried }).applied).toMatchObject({
      standard: 'observed',
      factor: 1,
      reached: true,
    });
  });

  test('the standard already carried stays as it is, even with its factor unknown', () => {
    const found = of({ carried: { standard: 'sae-j1349', factor: null }, weather: null });
    expect(found).toMatchObject({
      multiplier: 1,
      applied: { standard: 'sae-j1349', factor: null, reached: true },
    });
  });

  test.each([
    [
      'a factor that is not known',
      { carried: { standard: 'sae-j607', factor: null } as const },
      'factor-unknown',
    ],
    [
      'a standard that is not known',
      { carried: { standard: 'unknown', factor: null } as const },
      'factor-unknown',
    ],
    ['no weather', { weather: null }, 'no-weather'],
    ['weather that cannot be', { weather: { ...thinAir, pressure: absolutePressure(98) } }, 'no-weather'],
  ])('%s: not converted, and said so', (_, changes, code) => {
    const found = of(changes);
    expect(found.multiplier).toBe(1);
    expect(found.applied.reached).toBe(false);
    expect(codes(found)).toContain(code);
    expect(found.remarks.every((one) => one.level !== 'refusal')).toBe(true);
  });

  test('not stated is taken as observed with a caution', () => {
    const found = of({ carried: { standard: 'not stated', factor: null } });
    expect(found.multiplier).toBe(of({}).multiplier);
    expect(codes(found)).toContain('correction-not-stated');
  });

  test('a carried factor that the weather contradicts is named', () => {
    expect(codes(of({ carried: { standard: 'sae-j1349', factor: 1.02 } }))).toContain(
      'factor-is-not-the-weathers',
    );
    const right = of({}).multiplier;
    expect(codes(of({ carried: { standard: 'sae-j1349', factor: right } }))).not.toContain(
      'factor-is-not-the-weathers',
    );
  });

  test('a supercharged engine gets the sentence of the standard, and a caution beyond 3 %', () => {
    expect(codes(of({ boosted: true }))).toEqual(
      expect.arrayContaining(['supercharged', 'over-correction-possible']),
    );
    expect(codes(of({ boosted: true, weather: REFERENCE_WEATHER }))).not.toContain(
      'over-correction-possible',
    );
    expect(codes(of({ boosted: true, asked: 'observed' }))).toEqual([]);
  });
});
