import { expect, test } from 'vitest';
import type { PartChange, SectionId } from '../combination/index.ts';
import { keptOnTheBrake } from './kept-on-the-brake.ts';
import type { TrialCombination } from './model.ts';

const line = (section: SectionId, field: string): PartChange => ({
  section,
  field,
  label: field,
  before: 'one',
  after: 'other',
  packageName: null,
});
const combination = (key: string, takenApart?: boolean): TrialCombination => ({
  key,
  combinationId: key.toLowerCase(),
  shortName: '',
  ...(takenApart === undefined ? {} : { takenApart }),
});

test('a pulley is changed on the brake, a cam is not, and nothing known counts as taken apart', () => {
  const combinations = ['A', 'B', 'C', 'D'].map((key) => combination(key));
  const changes = { B: [line('drive', 'blowerPulleyDiameter')], C: [line('cam', 'liftIntake')], D: [] };
  expect(keptOnTheBrake({ combinations }, changes)).toEqual(['B']);
});

test('what the person said goes before the parts', () => {
  const combinations = [combination('A'), combination('B', true), combination('C', false)];
  const changes = { B: [line('drive', 'blowerPulleyDiameter')], C: [line('cam', 'liftIntake')] };
  expect(keptOnTheBrake({ combinations }, changes)).toEqual(['C']);
});

test('the same combination with another tune stays on the brake', () => {
  const combinations = [combination('A'), { ...combination('B'), combinationId: 'a' }];
  expect(keptOnTheBrake({ combinations }, {})).toEqual(['B']);
});

test('a trial without combinations has none', () => {
  expect(keptOnTheBrake({ combinations: [] }, {})).toEqual([]);
});
