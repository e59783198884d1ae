import { matchBands } from '@pullbook/core/airpath';
import { expect, test } from 'vitest';
import { bandCases } from './match-in-view.ts';
import { revivedBands, revivedBundle } from './revived.ts';
import { inventedBundle } from './test-bundle.ts';

const overTheWire = <Value>(value: Value): Value => JSON.parse(JSON.stringify(value)) as Value;

test('a bundle comes back as it was sent: gaps in lists as NaN, what is not known as null', () => {
  const bundle = inventedBundle();
  const first = bundle.combinations[0]!;
  first.measured!.power[3] = Number.NaN;
  const back = revivedBundle(overTheWire(bundle));
  expect(back.combinations[0]!.measured!.power[3]).toBeNaN();
  expect(back.combinations[0]!.measured!.chargeTemperature).toBeNull();
  expect(back.combinations[0]!.input.compressor.constantEfficiency).toBeNull();
  expect(back).toEqual(bundle);
});

test('bands with gaps come back with gaps', () => {
  const bands = matchBands(bandCases(inventedBundle(), null), { draws: 20, seed: 1 });
  bands.cases[0]!.boost.low[0] = Number.NaN;
  expect(revivedBands(overTheWire(bands))).toEqual(bands);
});
