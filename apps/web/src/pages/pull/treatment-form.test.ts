import { expect, test } from 'vitest';
import { formOf, treatmentFrom } from './treatment-form.ts';

const PLAIN = { lagsS: {}, windowRpm: null, binWidthRpm: null, addInertia: false };
const MEANINGS = [
  { id: 'lambda', label: 'Mixture, lambda' },
  { id: 'boost', label: 'Boost' },
];

test.each(['.', ','] as const)('what is not touched comes back as it was, decimal mark %s', (mark) => {
  const treatments = [
    PLAIN,
    {
      lagsS: { lambda: 0.35, boost: -0.05 },
      windowRpm: [3000, 6500] as [number, number],
      binWidthRpm: 100,
      addInertia: true,
    },
  ];
  for (const treatment of treatments) {
    expect(treatmentFrom(formOf(treatment, mark), MEANINGS)).toEqual({ treatment, faults: [] });
  }
});

test('a lag that was set and is now blank is none', () => {
  const form = { ...formOf({ ...PLAIN, lagsS: { lambda: 0.3 } }, '.'), lags: { lambda: ' ' } };
  expect(treatmentFrom(form, MEANINGS)).toMatchObject({ treatment: { lagsS: { lambda: 0 } } });
});

test('back to found forgets what was typed for the window', () => {
  const form = { ...formOf({ ...PLAIN, windowRpm: [3000, 6500] }, '.'), windowByHand: false, from: 'x' };
  expect(treatmentFrom(form, MEANINGS)).toMatchObject({ treatment: { windowRpm: null } });
});

test('each field that is no number is named with what was typed', () => {
  const form = {
    windowByHand: true,
    from: 'idle',
    to: '',
    binWidth: 'fine',
    lags: { lambda: 'a bit' },
    addInertia: false,
  };
  const read = treatmentFrom(form, MEANINGS);
  expect(read.treatment).toBe(null);
  expect(read.faults.map((one) => one.text)).toEqual([
    expect.stringContaining('Counted from "idle"'),
    expect.stringContaining('Counted to ""'),
    expect.stringContaining('Means over "fine"'),
    expect.stringContaining('Lag of Mixture, lambda "a bit"'),
  ]);
});
