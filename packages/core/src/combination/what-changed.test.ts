import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exampleEntry, FIELDS } from './fields.ts';
import type { Package } from './model.ts';
import { testSheet } from './test-sheet.ts';
import { whatChanged } from './what-changed.ts';

const cam = (fields: Record<string, unknown>) => testSheet({ cam: fields });

const KIT: Package = {
  id: 'kit',
  name: 'Supercharger kit',
  covers: ['supercharger', 'fuelSystem.injectorFlow'],
  invented: true,
};

describe('what is a change', () => {
  test('a value, with both texts as entered and the lift of its duration', () => {
    const before = cam({ durationLift: '1 mm', durationIntake: '242 deg' });
    const after = cam({ durationLift: '0.1 cm', durationIntake: '254 deg' });
    expect(whatChanged(before, after, [])).toEqual([
      {
        section: 'cam',
        field: 'durationIntake',
        label: 'Cam, intake duration at 1 mm',
        before: '242 deg',
        after: '254 deg',
        packageName: null,
      },
    ]);
  });

  test('durations told at different lifts carry none in their label, and the lift itself is a line', () => {
    const before = cam({ durationLift: '1 mm', durationIntake: '242 deg' });
    const after = cam({ durationLift: '0.050 in', durationIntake: '236 deg' });
    expect(whatChanged(before, after, []).map(({ label }) => label)).toEqual([
      'Cam, lift at which durations are told',
      'Cam, intake duration',
    ]);
  });

  test('unknown against known, known against nothing', () => {
    const changes = whatChanged(
      cam({ profile: 'unknown', liftIntake: '11 mm' }),
      cam({ profile: 'road', lobeSeparation: '111 deg' }),
      [],
    );
    expect(changes.map(({ field, before, after }) => [field, before, after])).toEqual([
      ['profile', 'unknown', 'road'],
      ['liftIntake', '11 mm', null],
      ['lobeSeparation', null, '111 deg'],
    ]);
  });

  test('a new section comes after the lines of the first sheet, under the package that covers it', () => {
    const before = testSheet({
      fuelSystem: { injectorFlow: '24 lb/h', pump: 'single' },
      fuel: { name: 'petrol' },
    });
    const after = testSheet({
      supercharger: { type: 'centrifugal', stepUp: 3.6 },
      fuelSystem: { injectorFlow: '65 lb/h', pump: 'double' },
      fuel: { name: 'petrol' },
    });
    const lines = whatChanged(before, after, [KIT]).map(({ label, packageName }) => [label, packageName]);
    expect(lines).toEqual([
      ['Fuel system, injector flow', 'Supercharger kit'],
      ['Fuel system, pump', null],
      ['Supercharger, type', 'Supercharger kit'],
      ['Supercharger, step-up', 'Supercharger kit'],
    ]);
  });
});

describe('what is none', () => {
  test('another unit of the same value, capitals, spaces, another origin, unknown against nothing', () => {
    const before = testSheet({
      shortBlock: { bore: '96 mm', stroke: { value: '4 in', origin: 'assumed' }, rodLength: 'unknown' },
      cam: { profile: 'Flat  tappet' },
    });
    const after = testSheet({
      shortBlock: { bore: '9.6 cm', stroke: { value: '101.6 mm', origin: 'measured' } },
      cam: { profile: 'flat tappet' },
    });
    expect(whatChanged(before, after, [])).toEqual([]);
  });

  test('any sheet against itself; and changes swap their sides with the sheets', () => {
    const example = fc.subarray([...FIELDS]).map((fields) => {
      const sections: Record<string, Record<string, unknown>> = {};
      for (const known of fields)
        sections[known.section] = { ...sections[known.section], [known.field]: exampleEntry(known) };
      return testSheet(sections);
    });
    const property = fc.property(example, example, (left, right) => {
      expect(whatChanged(left, left, [])).toEqual([]);
      const there = whatChanged(left, right, []).map(({ section, field, before, after }) => [
        section,
        field,
        before,
        after,
      ]);
      const back = whatChanged(right, left, []).map(({ section, field, before, after }) => [
        section,
        field,
        after,
        before,
      ]);
      expect(there.sort()).toEqual(back.sort());
    });
    fc.assert(property, { seed: 3810, numRuns: 100 });
  });
});
