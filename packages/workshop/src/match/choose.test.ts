import type { Combination } from '@pullbook/core/combination';
import { readCombinationText } from '@pullbook/formats';
import { expect, test } from 'vitest';
import { chooseBaseline } from './choose-baseline.ts';
import { chooseDonor } from './choose-donor.ts';

const BLOWER =
  'supercharger: {type: centrifugal, stepUp: 3.6}\ndrive: {crankPulleyDiameter: 165 mm, blowerPulleyDiameter: 84 mm}';
const SMALLER = BLOWER.replace('84 mm', '80 mm');
const cam = (degrees: number) => `cam: {durationIntake: ${degrees} deg}`;

function combination(id: string, ...lines: string[]): Combination {
  const read = readCombinationText(
    `schemaVersion: 1\nname: ${id}\nshortBlock: {bore: 96 mm, stroke: 88 mm}\n${lines.join('\n')}`,
  );
  if (!read.ok) throw new Error(read.remarks[0]?.message);
  return {
    id,
    engineId: 'one',
    name: id,
    sheet: read.value,
    revision: 1,
    madeFromId: null,
    packageIds: [],
    createdAt: '2026-01-01T00:00:00Z',
    invented: true,
  };
}

const alone = combination('alone', cam(242), 'fuelSystem: {injectorFlow: 24 lb/h}');
const blown = combination('blown', cam(242), BLOWER, 'fuelSystem: {injectorFlow: 65 lb/h}');
const blownLonger = combination('blown longer', cam(254), BLOWER);
const smaller = combination('smaller pulley', cam(242), SMALLER);

test('an engine that differs by the supercharger, its injectors and drive only is the baseline', () => {
  expect(chooseBaseline(blown, [alone, blown, blownLonger])).toMatchObject({ by: 'measured', of: alone });
  expect(chooseBaseline(smaller, [alone, blown])).toMatchObject({ by: 'measured', of: alone });
});

test('another cam is scaled by the pair that has the same change under boost', () => {
  expect(chooseBaseline(blownLonger, [alone, blown, blownLonger])).toMatchObject({
    by: 'scaled',
    of: { id: 'alone' },
    before: { id: 'blown' },
    after: { id: 'blown longer' },
    change: [{ field: 'durationIntake', before: '242 deg', after: '254 deg' }],
  });
});

test('a pair with another pulley on one side is none: the change was not alone', () => {
  const choice = chooseBaseline(blownLonger, [alone, smaller, blownLonger]);
  expect(choice.by).toBe('none');
  if (choice.by === 'none') {
    expect(choice.reason.code).toBe('no-baseline-alike');
    expect(choice.reason.message).toContain('intake duration (242 deg / 254 deg)');
  }
});

test('an engine that was never pulled without a supercharger has none, and is told what to pull', () => {
  expect(chooseBaseline(blown, [blown, blownLonger])).toMatchObject({
    by: 'none',
    reason: { level: 'refusal', code: 'no-baseline' },
  });
});

test('a fit comes from the same unit, the nearest engine first; never from another unit', () => {
  expect(chooseDonor(smaller, [alone, blownLonger, blown])?.id).toBe('blown');
  expect(chooseDonor(smaller, [alone, blownLonger])?.id).toBe('blown longer');
  expect(chooseDonor(smaller, [alone, smaller])).toBeNull();
  const far = combination('largest pulley', cam(242), BLOWER.replace('84 mm', '95 mm'));
  expect(chooseDonor(smaller, [far, blown])?.id).toBe('blown');
  expect(chooseDonor(smaller, [blown, far])?.id).toBe('blown');
  const other = combination('other unit', cam(242), SMALLER.replace('stepUp', 'unit: another, stepUp'));
  expect(chooseDonor(smaller, [other])).toBeNull();
});
