import { expect, test } from 'vitest';
import { treatmentWords } from './treatment-words.ts';

const channelMeanings = [{ id: 'lambda', label: 'Mixture, lambda' }];
const said = (
  treatment: Parameters<typeof treatmentWords>[0]['treatment'],
  mark: '.' | ',' = '.',
  shopBinWidthRpm: number | null = null,
) =>
  treatmentWords({ treatment, channelMeanings, shopBinWidthRpm }, mark)
    .map(({ label, value }) => `${label}: ${value}`)
    .join(' | ');

test('a pull that nobody touched', () => {
  expect(said({ lagsS: { lambda: 0 }, windowRpm: null, binWidthRpm: null, addInertia: false })).toBe(
    'Counted: the sweep as found | Means over: a width adapted to the sampling | Channels: all as recorded | Inertia torque: not added',
  );
});

test('a late channel is read earlier, an early one later', () => {
  const treatment = { lagsS: { lambda: 0.3 }, windowRpm: null, binWidthRpm: null, addInertia: false };
  expect(said(treatment, ',')).toContain('Mixture, lambda 0,3 s earlier');
  expect(said({ ...treatment, lagsS: { lambda: -0.05 } })).toContain('Mixture, lambda 0.05 s later');
});

test('what was set by hand says so', () => {
  const treatment = {
    lagsS: {},
    windowRpm: [3000, 6500] as [number, number],
    binWidthRpm: 100,
    addInertia: true,
  };
  expect(said(treatment)).toContain(
    'set by hand, 3,000 to 6,500 rpm | Means over: 100 rpm | Channels: all as recorded | Inertia torque: added',
  );
});

test('the shop’s width is named as such, and only where the pull has none of its own', () => {
  const treatment = { lagsS: {}, windowRpm: null, binWidthRpm: null, addInertia: false };
  expect(said(treatment, '.', 200)).toContain('Means over: 200 rpm, as the shop has it');
  expect(said({ ...treatment, binWidthRpm: 100 }, '.', null)).toContain('Means over: 100 rpm |');
});
