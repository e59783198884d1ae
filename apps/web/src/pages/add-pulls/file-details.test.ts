import { expect, test } from 'vitest';
import { importDetails, NO_DETAILS, sameAs } from './file-details.ts';

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
