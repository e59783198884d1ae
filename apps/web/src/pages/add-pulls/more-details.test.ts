import { expect, test } from 'vitest';
import { moreSaid, NO_MORE } from './more-details.ts';

test('what was left blank is not said', () => {
  expect(moreSaid(NO_MORE)).toEqual({});
  expect(moreSaid({ ...NO_MORE, jets: '  ', events: [{ engineSpeed: ' ', text: '' }] })).toEqual({});
});

test('tune and places go as their own groups, a note as one note', () => {
  expect(
    moreSaid({
      ...NO_MORE,
      sparkAdvance: ' 26 deg ',
      tuneNotes: 'coldest plugs',
      boostTap: 'plenum, rear',
      operator: 'second shift',
      note: 'belt dusty',
      momentOfInertia: '0.31 kg·m²',
      inertiaCompensated: 'no',
      outcome: 'aborted',
    }),
  ).toEqual({
    tune: { sparkAdvance: '26 deg', notes: 'coldest plugs' },
    places: { boostTap: 'plenum, rear' },
    operator: 'second shift',
    notes: 'belt dusty',
    momentOfInertia: '0.31 kg·m²',
    inertiaCompensated: 'no',
    outcome: 'aborted',
  });
});

test('an event without a speed is tied to none; one without words still goes, to be asked for', () => {
  const events = [
    { engineSpeed: '5600 rpm', text: 'throttle lifted' },
    { engineSpeed: '', text: 'knock heard' },
    { engineSpeed: '6000 rpm', text: '' },
  ];
  expect(moreSaid({ ...NO_MORE, events }).events).toEqual([
    { engineSpeed: '5600 rpm', text: 'throttle lifted' },
    { engineSpeed: null, text: 'knock heard' },
    { engineSpeed: '6000 rpm', text: '' },
  ]);
});
