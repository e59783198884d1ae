import { describe, expect, test } from 'vitest';
import { remarksOnSheet } from './remarks-on-sheet.ts';
import { testSheet } from './test-sheet.ts';

const BLOCK = {
  bore: '96 mm',
  stroke: '88 mm',
  gasketBore: '98 mm',
  gasketThickness: '1.2 mm',
  deckClearance: '0.5 mm',
  pistonDishVolume: '0 cm3',
};
const codes = (compressionRatio: string, chamberVolume = '61.4 cm3', block = {}) =>
  remarksOnSheet(
    testSheet({ shortBlock: { ...BLOCK, compressionRatio, ...block }, heads: { chamberVolume } }),
  ).map(({ code }) => code);

describe('entered compression ratio against the volumes, which give 9.60', () => {
  test('within 0.15: silent', () => {
    expect(codes('9.46')).toEqual([]);
    expect(codes('9.74')).toEqual([]);
  });

  test('further off: a note with both figures', () => {
    expect(codes('9.44')).toEqual(['compression-ratio-disagrees']);
    expect(codes('9.76')).toEqual(['compression-ratio-disagrees']);
  });

  test('unknown, or a volume unknown: silent', () => {
    expect(codes('unknown')).toEqual([]);
    expect(codes('12', 'unknown')).toEqual([]);
  });

  test('volumes that leave no room: a caution', () => {
    expect(codes('unknown', '10 cm3', { pistonDishVolume: '-30 cm3' })).toEqual(['no-clearance-volume']);
  });
});

test('a duration without the lift at which it is told: a note', () => {
  const cam = (fields: Record<string, string>) =>
    remarksOnSheet(testSheet({ cam: fields })).map(({ code }) => code);
  expect(cam({ durationIntake: '242 deg' })).toEqual(['duration-without-lift']);
  expect(cam({ durationIntake: '242 deg', durationLift: '0.050 in' })).toEqual([]);
  expect(cam({ durationIntake: 'unknown' })).toEqual([]);
});

test('a stated displacement more than 4 % off bore and stroke (3822 cm³): a caution with both figures', () => {
  const stated = (displacement: string, bore = '96 mm') =>
    remarksOnSheet(testSheet({ shortBlock: { cylinders: 6, bore, stroke: '88 mm', displacement } }));
  expect(stated('3.8 L')).toEqual([]);
  expect(stated('3.68 L')).toEqual([]);
  expect(stated('4.2 L')).toMatchObject([{ level: 'caution', code: 'displacement-disagrees' }]);
  expect(stated('4.2 L')[0]!.message).toMatch(/4200 cm³.*3822 cm³/);
  expect(stated('4.2 L', 'unknown')).toEqual([]);
});
