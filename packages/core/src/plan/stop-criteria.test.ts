import { describe, expect, test } from 'vitest';
import { testSheet } from '../combination/test-sheet.ts';
import { cautionsOf, PLANNING_AID } from './cautions.ts';
import { type PlannedEngine, plannedEngine, togetherOnOneCard } from './planned-engine.ts';
import { stopCriteria } from './stop-criteria.ts';

const bare: PlannedEngine = {
  isBoosted: false,
  isSupercharged: false,
  hasNitrous: false,
  fuel: 'gasoline',
  isBlowThrough: false,
  isRoots: false,
  hasBelt: false,
  fuelPressure: null,
  maximumImpellerSpeed: null,
  highestBoost: null,
  boostForetold: null,
  highestSpeedRpm: null,
};
const blown: PlannedEngine = {
  ...bare,
  isBoosted: true,
  isSupercharged: true,
  hasBelt: true,
  maximumImpellerSpeed: 52_000,
  highestBoost: 60_000,
  highestSpeedRpm: 6500,
};

const fuelled = (engine: PlannedEngine, followsBoost: boolean): PlannedEngine => ({
  ...engine,
  fuelPressure: { atRest: 300e3, followsBoost },
});

const limitOf = (engine: PlannedEngine, id: string): string | undefined =>
  stopCriteria(engine).find((one) => one.id === id)?.limit.text;

describe('limits of the trade (common practice, no source), in SI', () => {
  test.each([
    // 7 psi for each 1,000 r/min; 1550, 215 and 260 °F; lambda 0.88 boosted and 0.95 naturally aspirated on gasoline.
    ['oil-pressure', bare, /^48 kPa for each 1,000 r\/min \(be warned below 69 kPa\)$/],
    ['exhaust', bare, /^843 °C$/],
    ['coolant', bare, /^102 °C$/],
    ['oil', bare, /^127 °C$/],
    ['lambda', bare, /0\.95/],
    ['lambda', blown, /0\.88/],
    // 60 kPa pulled so far and 1.5 psi (10.3 kPa) more.
    ['boost', blown, /^70\.3 kPa/],
    // A planned pulley that is foretold to make more than that is stopped above what is foretold.
    ['boost', { ...blown, boostForetold: 84_000 }, /^84\.0 kPa \(upper end of what is foretold\)$/],
    ['boost', { ...blown, boostForetold: 65_000 }, /^70\.3 kPa/],
    ['fuel-pressure', blown, /plus boost less 14 kPa/],
    // 300 kPa at rest and the 60 kPa pulled so far, less 2 psi: 346 kPa; without boost behind the regulator 286 kPa.
    [
      'fuel-pressure',
      fuelled(blown, true),
      /^300 kPa plus boost less 14 kPa: 346 kPa at the 60\.0 kPa pulled so far$/,
    ],
    ['fuel-pressure', fuelled(blown, false), /^300 kPa less 14 kPa: 286 kPa$/],
    ['fuel-pressure', fuelled(bare, true), /^300 kPa less 14 kPa: 286 kPa$/],
    ['fuel-pressure', { ...fuelled(blown, true), highestBoost: null }, /^300 kPa plus boost less 14 kPa$/],
    ['fuel-pressure', bare, /^its resting pressure less 14 kPa$/],
    ['impeller', blown, /52,000/],
    ['speed', blown, /6,500/],
  ] as const)('%s', (id, engine, expected) => {
    expect(limitOf(engine, id)).toMatch(expected);
  });

  test('what an engine does not have is not on its card', () => {
    for (const id of ['boost', 'impeller', 'nitrous']) expect(limitOf(bare, id)).toBeUndefined();
    expect(limitOf({ ...bare, hasNitrous: true }, 'nitrous')).toBeDefined();
  });

  test('every line has a source', () => {
    for (const { source } of stopCriteria(blown)) expect(source).not.toBe('');
  });
});

describe('cautions', () => {
  test('people out of the cell, whatever the engine', () => {
    expect(PLANNING_AID).toContain('Nobody in the cell during a pull.');
    expect(PLANNING_AID).toContain('not a safety device');
  });

  test.each([
    ['methanol', { ...bare, fuel: 'methanol' } as const, /nearly invisible/],
    ['alcohol hoses', { ...bare, fuel: 'ethanol' } as const, /hose and seal rated/],
    ['nitrous', { ...bare, hasNitrous: true }, /never a flame/],
    ['belt', blown, /no fingers near it/],
    ['backfire', { ...blown, isRoots: true }, /burst panel/],
  ])('%s', (_, engine, words) => {
    expect(cautionsOf(engine).join('\n')).toMatch(words);
    expect(cautionsOf(bare).join('\n')).not.toMatch(words);
  });
});

describe('what the sheet says', () => {
  const none = { highestBoost: null, highestSpeedRpm: null };
  test.each([
    ['methanol', 'methanol'],
    ['E85', 'ethanol'],
    ['pump petrol E10', 'gasoline'],
    ['gasoline', 'gasoline'],
    ['unknown', 'unknown'],
  ])('fuel %s', (name, fuel) => {
    expect(plannedEngine(testSheet({ fuel: { name } }), none).fuel).toBe(fuel);
  });

  test('fuel pressure only where it is told, and on one card only where it is the same', () => {
    const on = (lines: Record<string, string>) => plannedEngine(testSheet({ fuelSystem: lines }), none);
    const [told, other, untold] = [
      on({ fuelPressure: '3 bar' }),
      on({ fuelPressure: '4 bar' }),
      on({ pump: 'in tank' }),
    ];
    expect(told.fuelPressure).toEqual({ atRest: 300e3, followsBoost: true });
    expect(untold.fuelPressure).toBeNull();
    expect(togetherOnOneCard([told, told]).fuelPressure).toEqual(told.fuelPressure);
    for (const [one, two] of [
      [told, other],
      [told, untold],
      [untold, told],
    ] as const)
      expect(togetherOnOneCard([one, two]).fuelPressure).toBeNull();
  });

  test('a supercharger with its belt; a turbocharger without; none', () => {
    const on = (type: string) =>
      plannedEngine(testSheet({ supercharger: { type }, drive: { type: 'ribbed belt' } }), none);
    expect(on('centrifugal')).toMatchObject({ isBoosted: true, isSupercharged: true, hasBelt: true });
    expect(on('turbocharger')).toMatchObject({ isBoosted: true, isSupercharged: false, hasBelt: false });
    expect(on('none')).toMatchObject({ isBoosted: false, hasBelt: false });
  });
});
