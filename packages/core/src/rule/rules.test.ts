import { describe, expect, test } from 'vitest';
import { fromInside } from '../quantity/index.ts';
import { LIMITS, RULES, thresholdNamed, withSilenced } from './index.ts';
import { RULE_CASES } from './rule-cases.testing.ts';

/** Rules that only a plan breaks: the limits of a planned engine have cases of their own, in `limit/limits.test.ts`. */
const OF_A_PLAN = ['V19', 'V47', 'V48', 'V49', 'V51', 'V52'];
const here = RULES.filter(({ id, elsewhere }) => elsewhere === null && !OF_A_PLAN.includes(id));

test('fifty-two rules, each once, in order', () => {
  const ids = Array.from({ length: 52 }, (_, index) => `V${String(index + 1).padStart(2, '0')}`);
  expect(RULES.map(({ id }) => id)).toEqual(ids);
});

test('each rule has a case, or says where it is looked at', () => {
  expect(here.map(({ id }) => id)).toEqual(Object.keys(RULE_CASES).toSorted());
  for (const { elsewhere } of RULES) expect(elsewhere).not.toBe('');
  for (const id of OF_A_PLAN) expect(Object.values(LIMITS).map(({ ruleId }) => ruleId)).toContain(id);
});

describe.each(here)('$id $title', ({ id, provenance }) => {
  const of = RULE_CASES[id]!;
  test('is found where it is broken, with what was looked at and a sentence', () => {
    const found = of.breaks().filter((one) => one.ruleId === id);
    expect(found.length).toBeGreaterThan(0);
    for (const one of found) {
      expect(one.input).not.toBe('');
      expect(one.source).toBe(provenance.source);
      expect(one.remark.code).toBe(`rule-${id.toLowerCase()}`);
      expect(one.remark.message).toMatch(/[.!]$/);
      expect(one.remark.message).not.toMatch(/NaN|undefined|null|Infinity/);
      expect((one.value === null) === (one.kind === null)).toBe(true);
    }
  });
  test('is silent where it holds', () => {
    expect(of.holds().filter((one) => one.ruleId === id)).toEqual([]);
  });
});

// The trade's table as typed by hand: catalogue of plausibility checks and the sections it points to. Common practice and
// from memory; a slip of a unit in the catalogue shows here.
test.each([
  ['V01.share', 0.005, null],
  ['V03.slope', 0.25, null],
  ['V04.constant', 0.003, null],
  ['V04.weather', 0.005, null],
  ['V06.off', 0.6, 'inHg'],
  ['V08.low', 0.36, 'lb/(hp·h)'],
  ['V08.high', 0.62, 'lb/(hp·h)'],
  ['V08.boostedLow', 0.45, 'lb/(hp·h)'],
  ['V08.boostedHigh', 0.85, 'lb/(hp·h)'],
  ['V09.share', 0.07, null],
  ['V10.high', 256, 'psi'],
  ['V11.below', 2, 'inHg'],
  ['V12.zero', 0.5, 'psi'],
  ['V13.exponentLow', 1.5, null],
  ['V13.exponentHigh', 2.4, null],
  ['V13.slip', 0.03, null],
  ['V13.slipAlarm', 0.05, null],
  ['V14.low', 0.5, null],
  ['V14.high', 0.85, null],
  ['V15.effectiveness', 0.95, null],
  ['V16.low', 0.72, null],
  ['V16.high', 1.08, null],
  ['V17.duty', 0.85, null],
  ['V17.dutyAlarm', 0.95, null],
  ['V18.share', 0.1, null],
  ['V20.near', 0.95, null],
  ['V21.cast', 3500, 'ft/min'],
  ['V21.forged', 4000, 'ft/min'],
  ['V21.race', 5000, 'ft/min'],
  ['V22.ringBoost', 8, 'psi'],
  ['V25.oil', 10, '°F'],
  ['V25.coolant', 5, '°F'],
  ['V28.share', 0.01, null],
  ['V31.swing', 0.02, null],
  ['V32.spread', 200, '°F'],
  ['V32.cold', 300, '°F'],
  ['V36.off', 0.15, null],
  ['V37.share', 0.005, null],
  ['V39.oil', 10, 'psi'],
  ['V39.oilAlarm', 7, 'psi'],
  ['V39.crankcase', 0.3, null],
  ['V13.residual', 0.06, null],
  ['V14.matched', 0.6, null],
  ['V15.loss', 2, 'psi'],
  ['V19.margin', 1.15, null],
  ['V45.bolts', 10, 'psi'],
  ['V45.composition', 600 / 8, 'hp'],
  ['V46.castPistonsBoost', 6, 'psi'],
  ['V46.castPistons', 500 / 8, 'hp'],
  ['V46.castCrankshaft', 500 / 8, 'hp'],
  ['V46.nodularCrankshaft', 600 / 8, 'hp'],
  ['V46.forgedCrankshaft', 1000 / 8, 'hp'],
  ['V46.productionRods', 550 / 8, 'hp'],
  ['V46.forgedRods', 800 / 8, 'hp'],
  ['V46.twoBolt', 500 / 8, 'hp'],
  ['V50.floats', 8, 'psi'],
] as const)('%s is the trade’s %d', (id, value, unit) => {
  const threshold = thresholdNamed(id)!;
  const shown = unit === null ? threshold.value : fromInside(threshold.value, unit, threshold.kind);
  // The limit on the barometer is rounded to 2 kPa where the barometer is read: 0.59 inHg.
  expect(Math.abs(shown / value - 1)).toBeLessThan(id === 'V06.off' ? 0.02 : 1e-6);
});

test('a silenced finding stays, last, with its reason; another subject or rule speaks on', () => {
  const found = [...RULE_CASES.V39!.breaks(), ...RULE_CASES.V08!.breaks()];
  const silenced = {
    id: '1',
    ruleId: 'V08',
    subject: 'pull invented',
    reason: 'new meter',
    at: '2026-03-10T10:00:00Z',
  };
  const heard = withSilenced(found, [silenced, { ...silenced, ruleId: 'V39', subject: 'pull another' }]);
  expect(heard.length).toBe(found.length);
  expect(heard.at(-1)).toMatchObject({ ruleId: 'V08', silenced: { reason: 'new meter' } });
  expect(heard.filter((one) => one.ruleId === 'V39').every((one) => one.silenced === null)).toBe(true);
});
