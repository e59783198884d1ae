import { describe, expect, test } from 'vitest';
import type { Publication, PublishedFigure, SaidFigure } from './model.ts';
import { publicationsOf } from './publications-of.ts';
import { staleFigures } from './stale-figures.ts';

const figure = (fields: Partial<SaidFigure> = {}): SaidFigure => ({
  id: 'peakPower',
  key: 'A',
  kind: 'power',
  value: 370_000,
  low: 368_000,
  high: 372_000,
  engineSpeedRpm: 6450,
  units: 'si',
  ...fields,
});

const isStale = (said: SaidFigure, now: Partial<PublishedFigure>) =>
  staleFigures({ figures: [said] }, [{ ...said, ...now }]).length === 1;

describe('a figure is stale when it would be written otherwise than it was', () => {
  // Worked by hand. 1 hp is 745.69987 W, 1 lb·ft 1.3558179 N·m, 1 psi 6894.757 Pa.
  test.each([
    // 370.0 kW; 496.2 hp is what 370 kW are (496.178), 496.3 from 496.25 hp = 370 053.6 W on.
    ['power in kW', figure(), 370_049, 370_051],
    ['power in hp', figure({ units: 'us' }), 370_053, 370_054],
    // 295.0 lb·ft are what 400 N·m are (295.025), 295.1 from 295.05 lb·ft = 400.034 N·m on.
    ['torque in N·m', figure({ id: 'peakTorque', kind: 'torque', value: 400 }), 400.049, 400.051],
    ['torque in lb·ft', figure({ kind: 'torque', value: 400, units: 'us' }), 400.033, 400.035],
    // 9.3 psi: from 9.25 psi = 63 776.5 Pa to 9.35 psi = 64 466.0 Pa.
    ['boost in psi', figure({ kind: 'gaugePressure', value: 63_800, units: 'us' }), 64_465, 64_467],
    ['share', figure({ id: 'meanGainRatio', kind: 'ratio', value: 0.03 }), 0.030049, 0.030051],
  ])('%s', (_, said, alike, otherwise) => {
    expect(isStale(said, { value: alike })).toBe(false);
    expect(isStale(said, { value: otherwise })).toBe(true);
  });

  test('near to where it is rounded, what is written decides and not how far it is', () => {
    expect(isStale(figure({ value: 370_049 }), { value: 370_051 })).toBe(true);
    expect(isStale(figure({ value: 369_951 }), { value: 370_049 })).toBe(false);
  });

  test('another ten of engine speed, or a place that came or went', () => {
    expect(isStale(figure(), { engineSpeedRpm: 6454 })).toBe(false);
    expect(isStale(figure(), { engineSpeedRpm: 6456 })).toBe(true);
    expect(isStale(figure(), { engineSpeedRpm: null })).toBe(true);
  });

  test('the band does not count', () => {
    expect(isStale(figure(), { low: 300_000, high: null })).toBe(false);
  });
});

test('what the trial no longer says is stale without a figure of today; another combination is another figure', () => {
  const said = figure();
  expect(staleFigures({ figures: [said] }, [{ ...said, key: 'B' }])).toEqual([{ said, now: null }]);
  expect(staleFigures({ figures: [said] }, null)).toEqual([{ said, now: null }]);
  expect(staleFigures({ figures: [] }, null)).toEqual([]);
});

test('publications are found by any pull they rest on', () => {
  const resting = (id: string, ...pullIds: string[]) => ({ id, pullIds }) as Publication;
  const all = [resting('one', 'a', 'b'), resting('two', 'c')];
  expect(publicationsOf(all, ['b', 'x']).map(({ id }) => id)).toEqual(['one']);
  expect(publicationsOf(all, [])).toEqual([]);
});
