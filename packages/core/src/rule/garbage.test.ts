import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type ChannelMeaning, defaultRecipe, MEANINGS, viewPull } from '../pull/index.ts';
import { inventedChannel, inventedPull } from '../pull/invented-pull.testing.ts';
import { findingsOfPull, findingsOfSession } from './index.ts';
import { sheetOf } from './rules.testing.ts';

const odd = fc.oneof(
  fc.double({ min: -1e4, max: 1e6 }),
  fc.constantFrom(0, -0, Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 1e300, 5e-324),
  fc.integer({ min: 800, max: 7000 }),
);
const meanings = Object.keys(MEANINGS) as ChannelMeaning[];
const sheet = sheetOf({
  shortBlock: {
    bore: '100 mm',
    stroke: '90 mm',
    cylinders: '8',
    compressionRatio: '11',
    topRingGap: '0.3 mm',
  },
  ignition: { plugGap: '1 mm' },
  fuel: { name: 'petrol', researchOctane: '98' },
  fuelSystem: { injectors: '8', injectorFlow: '35 lb/h', injectorFlowPressure: '3 bar' },
  cooler: { type: 'air to air' },
  supercharger: {
    type: 'centrifugal',
    stepUp: '4',
    maximumImpellerSpeed: '60000 rpm',
    wheelExitDiameter: '120 mm',
  },
  drive: { crankPulleyDiameter: '190 mm', blowerPulleyDiameter: '95 mm' },
});

test('whatever the columns hold, findings have figures and sentences that can be read', () => {
  const columns = fc
    .integer({ min: 0, max: 60 })
    .chain((rows) =>
      fc.tuple(
        fc.integer({ min: 0, max: 200 }),
        ...meanings.map(() => fc.option(fc.array(odd, { minLength: rows, maxLength: rows }))),
      ),
    );
  fc.assert(
    fc.property(columns, fc.boolean(), ([step, ...values], withSheet) => {
      const channels = values.flatMap((column, index) => {
        if (column === null) return [];
        const meaning = meanings[index]!;
        // A speed that rises is what lets the other columns through to a curve.
        const own = meaning === 'engineSpeed' ? column.map((_, row) => 2000 + step * row) : column;
        return [
          inventedChannel(meaning, own),
          ...(meaning === 'exhaustTemperature' ? [inventedChannel(meaning, own)] : []),
        ];
      });
      const pull = inventedPull(channels, { orderInSession: 1, recordedAt: 'yesterday' });
      const view = viewPull(pull, defaultRecipe('sae-j1349'));
      const found = [
        ...findingsOfPull(pull, view, { sheet: withSheet ? sheet : null }),
        ...findingsOfSession('s', [
          { pull, view },
          { pull, view },
        ]),
      ];
      for (const one of found) {
        expect(one.remark.message).not.toMatch(/undefined|null|NaN/);
        for (const figure of [one.value, one.threshold])
          expect(figure === null || Number.isFinite(figure)).toBe(true);
      }
    }),
    { seed: 20261125, numRuns: 300 },
  );
});
