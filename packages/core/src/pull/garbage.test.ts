import fc from 'fast-check';
import { expect, test } from 'vitest';
import { compareCombinations } from '../compare/index.ts';
import { inventedChannel, inventedPull } from './invented-pull.testing.ts';
import type { ChannelMeaning } from './model.ts';
import { defaultRecipe } from './recipe.ts';
import { viewPull } from './view-pull.ts';

const odd = fc.oneof(
  fc.double({ min: -1e4, max: 1e4 }),
  fc.constantFrom(0, -0, Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 1e300, 5e-324),
  fc.integer({ min: 800, max: 7000 }),
);
const meanings: ChannelMeaning[] = [
  'engineSpeed',
  'torque',
  'power',
  'time',
  'throttle',
  'boost',
  'manifoldPressure',
  'correctionFactor',
  'barometer',
];

test('whatever the columns hold, a view and a comparison come back with finite peaks or none', () => {
  const columns = fc
    .integer({ min: 0, max: 60 })
    .chain((rows) =>
      fc.tuple(...meanings.map(() => fc.option(fc.array(odd, { minLength: rows, maxLength: rows })))),
    );
  const width = fc.constantFrom('adapted' as const, 50, 250);
  const window = fc.constantFrom(null, [1000, 3000] as [number, number], [9000, 1000] as [number, number]);
  fc.assert(
    fc.property(columns, width, window, fc.boolean(), (values, binWidthRpm, windowRpm, addInertia) => {
      const channels = values.flatMap((column, index) =>
        column === null ? [] : [inventedChannel(meanings[index]!, column)],
      );
      const pull = inventedPull(channels, {
        weather: null,
        sweep: { momentOfInertia: 0.3, inertiaCompensated: 'no' },
      });
      const view = viewPull(pull, {
        ...defaultRecipe(),
        binWidthRpm,
        windowRpm,
        addInertia,
        lags: { torque: 0.2 },
      });
      for (const peak of [view.peakPower, view.peakTorque])
        if (peak !== null) expect(Number.isFinite(peak.value) && Number.isFinite(peak.atRpm)).toBe(true);
      for (const one of view.remarks) expect(one.message).not.toMatch(/undefined|NaN|null/);
      if (view.curve === null) expect(view.remarks.some((one) => one.level === 'refusal')).toBe(true);
      const input = (key: string) => ({ key, combinationId: null, pulls: [{ pull, view }] });
      const { gains } = compareCombinations([input('A'), input('B')]);
      for (const gain of gains) expect(gain.meanPower).toBe(0);
    }),
    { seed: 20260314, numRuns: 120 },
  );
});
