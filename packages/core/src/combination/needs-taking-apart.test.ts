import { expect, test } from 'vitest';
import { fieldNamed } from './fields.ts';
import { CHANGED_ON_THE_BRAKE, needsTakingApart } from './needs-taking-apart.ts';
import { testSheet } from './test-sheet.ts';
import { whatChanged } from './what-changed.ts';

const apart = (
  before: Record<string, Record<string, unknown>>,
  after: Record<string, Record<string, unknown>>,
) => needsTakingApart(whatChanged(testSheet(before), testSheet(after), []));

test.each([
  [
    'a smaller pulley',
    { drive: { blowerPulleyDiameter: '80 mm' } },
    { drive: { blowerPulleyDiameter: '75 mm' } },
  ],
  ['another fuel', { fuel: { name: 'pump petrol', researchOctane: '98' } }, { fuel: { name: 'E85' } }],
  ['colder plugs', { ignition: { plugs: 'stock' } }, { ignition: { plugs: 'two steps colder' } }],
  ['the filter off', { intake: { airFilter: 'paper' } }, { intake: { airFilter: 'none' } }],
  ['ice in the cooler', { cooler: { coolant: 'water' } }, { cooler: { coolant: 'ice water' } }],
])('%s is changed on the brake', (_, before, after) => {
  expect(apart(before, after)).toBe(false);
});

test.each([
  ['a cam', { cam: { durationIntake: '224 deg' } }, { cam: { durationIntake: '236 deg' } }],
  ['a manifold', { intake: { manifold: 'low' } }, { intake: { manifold: 'high' } }],
  ['headers', { exhaust: { primaryDiameter: '42 mm' } }, { exhaust: { primaryDiameter: '45 mm' } }],
  ['a cooler', { cooler: { type: 'none' } }, { cooler: { type: 'air to water' } }],
  ['another unit', { supercharger: { unit: 'no. 1' } }, { supercharger: { unit: 'no. 2' } }],
  ['a line of the person’s own', { cam: { 'key way': 'stock' } }, { cam: { 'key way': 'offset' } }],
])('%s takes it apart', (_, before, after) => {
  expect(apart(before, after)).toBe(true);
});

test('one line that does is enough among many that do not', () => {
  expect(
    apart(
      { drive: { blowerPulleyDiameter: '80 mm' }, cam: { liftIntake: '11 mm' } },
      { drive: { blowerPulleyDiameter: '75 mm' }, cam: { liftIntake: '12 mm' } },
    ),
  ).toBe(true);
});

test('nothing changed takes nothing apart', () => {
  expect(needsTakingApart([])).toBe(false);
});

test('every line of the table is a field that sheets know', () => {
  for (const { section, field } of CHANGED_ON_THE_BRAKE)
    if (field !== null) expect(fieldNamed(section, field), `${section}.${field}`).not.toBeNull();
});
