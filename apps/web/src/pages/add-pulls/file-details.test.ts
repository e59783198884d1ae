import { expect, test } from 'vitest';
import type { WrittenFields } from '../../api/edge.ts';
import { importDetails, NO_DETAILS, nameAfter, sameAs, startingDetails, thisMinute } from './file-details.ts';

test('what was left blank is not said', () => {
  expect(importDetails(NO_DETAILS, [])).toEqual({
    mapping: [],
    combinationId: null,
    weather: null,
    carried: { standard: 'not stated', factor: null },
  });
});

test('weather goes as text; a blank humidity or altitude is unknown', () => {
  const details = { ...NO_DETAILS, pressure: ' 98.2 kPa ', temperature: '30 C' };
  expect(importDetails(details, []).weather).toEqual({
    pressure: '98.2 kPa',
    temperature: '30 C',
    humidity: null,
    altitude: null,
  });
});

test.each([
  ['observed', '', 1],
  ['sae-j1349', '1,021', 1.021],
  ['sae-j1349', '1.021', 1.021],
  ['sae-j1349', 'about two', null],
  ['unknown', '1.02', null],
] as const)('corrected by %s with factor "%s"', (standard, factor, expected) => {
  expect(importDetails({ ...NO_DETAILS, standard, factor }, []).carried).toEqual({
    standard,
    factor: expected,
  });
});

test('a time carries the offset of its own day', () => {
  const { recordedAt } = importDetails({ ...NO_DETAILS, recordedAt: '2026-03-14T10:42' }, []);
  expect(recordedAt).toMatch(/^2026-03-14T10:42:00[+-]\d\d:\d\d$/);
  expect(new Date(recordedAt!).getTime()).toBe(new Date('2026-03-14T10:42').getTime());
});

test('the same as the last keeps the pull’s own name, time and happenings', () => {
  const last = {
    ...NO_DETAILS,
    name: 'Pull 11',
    cell: 'Cell 2',
    setUp: 'second fitting',
    recordedAt: '2026-03-14T10:42',
    sparkAdvance: '26 deg',
    note: 'belt dusty',
    outcome: 'aborted' as const,
    events: [{ engineSpeed: '5600 rpm', text: 'throttle lifted' }],
  };
  const own = { ...NO_DETAILS, name: 'Pull 12' };
  expect(sameAs(last, own)).toEqual({
    ...NO_DETAILS,
    name: 'Pull 12',
    cell: 'Cell 2',
    setUp: 'second fitting',
    sparkAdvance: '26 deg',
    recordedAt: '',
  });
});

const SIX: WrittenFields = {
  name: 'Pull 7',
  combinationId: 'base',
  setUp: 'first fitting',
  cell: 'Cell 2',
  operator: '',
  recordedAt: '',
  pressure: '98.2 kPa',
  temperature: '30 °C',
  humidity: '',
  altitude: '',
  standard: 'observed',
  factor: '',
  sparkAdvance: '26 deg',
  targetLambda: '',
  jets: '',
  fuelPressure: '',
  coolerWater: '',
  fuelBatch: '',
  tuneNotes: '',
  boostTap: '',
  chargeProbe: '',
  inletProbe: '',
  momentOfInertia: '',
  inertiaCompensated: '',
  outcome: 'completed',
};
const SAID = {
  cell: 'Cell 1',
  standard: 'sae-j1349',
  boostTap: 'plenum',
  chargeProbe: null,
  inletProbe: null,
  momentOfInertia: null,
  inertiaCompensated: null,
};

test('a form starts like the other pull; what was said of the kind of file fills its blanks', () => {
  const start = startingDetails({ like: SIX, said: SAID, combinationId: '' });
  expect(start).toMatchObject({ combinationId: 'base', cell: 'Cell 2', standard: 'observed' });
  expect(start).toMatchObject({ boostTap: 'plenum', sparkAdvance: '26 deg', outcome: '', note: '' });
  const alone = startingDetails({ like: null, said: SAID, combinationId: '' });
  expect(alone).toMatchObject({ cell: 'Cell 1', standard: 'sae-j1349', combinationId: '' });
});

test('for another combination the set-up is not the same', () => {
  const start = startingDetails({ like: SIX, combinationId: 'long' });
  expect([start.combinationId, start.setUp, start.cell]).toEqual(['long', '', 'Cell 2']);
});

test('names go on by number, and this minute is one of this machine', () => {
  expect([nameAfter('Pull 9', 2), nameAfter('Base', 2)]).toEqual(['Pull 11', 'Base']);
  expect(thisMinute(new Date(2026, 2, 4, 9, 5, 59))).toBe('2026-03-04T09:05');
});
