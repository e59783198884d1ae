import { expect, test } from 'vitest';
import { NO_DETAILS } from '../add-pulls/file-details.ts';
import { amendmentFrom } from './amendment-from.ts';

const STANDS = {
  ...NO_DETAILS,
  name: 'Pull 6',
  combinationId: 'base',
  setUp: 'first fitting',
  cell: 'Cell 2',
  recordedAt: '2026-03-14T10:42',
  pressure: '98.2 kPa',
  temperature: '30 °C',
  standard: 'sae-j1349' as const,
  factor: '1.021',
  sparkAdvance: '26 deg',
  boostTap: 'plenum',
  momentOfInertia: '0.31 kg·m²',
  inertiaCompensated: 'no' as const,
  outcome: 'completed' as const,
};

test('what was not touched is not sent', () => {
  expect(amendmentFrom(STANDS, STANDS)).toEqual({});
  expect(amendmentFrom(STANDS, { ...STANDS, name: ' ' })).toEqual({});
});

test('a field that was emptied is cleared, one that was filled is sent, its neighbours stay', () => {
  const typed = {
    ...STANDS,
    cell: '',
    setUp: ' ',
    sparkAdvance: '',
    jets: '82',
    boostTap: '',
    recordedAt: '',
  };
  expect(amendmentFrom(STANDS, typed)).toEqual({
    cell: null,
    setUp: null,
    recordedAt: null,
    tune: { sparkAdvance: null, jets: '82' },
    places: { boostTap: null },
  });
  const none = { momentOfInertia: '', inertiaCompensated: '' as const, combinationId: '' };
  expect(amendmentFrom(STANDS, { ...STANDS, ...none })).toEqual({
    combinationId: null,
    momentOfInertia: null,
    inertiaCompensated: 'unknown',
  });
});

test('the air goes whole, or not at all', () => {
  expect(amendmentFrom(STANDS, { ...STANDS, humidity: '45 %' })).toEqual({
    weather: { pressure: '98.2 kPa', temperature: '30 °C', humidity: '45 %', altitude: null },
  });
  expect(amendmentFrom(STANDS, { ...STANDS, pressure: '', temperature: '' })).toEqual({ weather: null });
});

test('what the figures carry goes with its factor', () => {
  expect(amendmentFrom(STANDS, { ...STANDS, factor: '' })).toEqual({
    carried: { standard: 'sae-j1349', factor: null },
  });
});
