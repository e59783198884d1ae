import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromInside, toInside } from './convert.ts';
import { KIND_NAME } from './kind-name.ts';
import type { QuantityKind } from './model.ts';
import { UNITS, unitFor, unitsFor, unitsOfKind } from './unit-table.ts';

const kinds = Object.keys(KIND_NAME) as QuantityKind[];

describe('the closed list', () => {
  test.each(kinds)('%s has units, one of them the inside unit', (kind) => {
    const units = unitsOfKind(kind);
    expect(units.length).toBeGreaterThan(0);
    expect(units.some((unit) => unit.factor === 1 && unit.offset === 0)).toBe(true);
  });

  test('every spelling finds its own unit, in its kind', () => {
    for (const unit of UNITS) {
      for (const spelling of unit.spellings) expect(unitFor(spelling, unit.kind)?.id, spelling).toBe(unit.id);
    }
  });

  test('ids are unique', () => {
    expect(new Set(UNITS.map((unit) => unit.id)).size).toBe(UNITS.length);
  });
});

describe('what is forgiven', () => {
  test.each([
    ['N·m', 'Nm N.m N-m N*m NM', 'torque/N·m'],
    ['lb-ft', 'lbf·ft lb·ft ft-lb ftlb LB-FT Lb.Ft lbft', 'torque/lb-ft'],
    ['rpm', 'RPM r/min 1/min min-1 min⁻¹ rev/min', 'engineSpeed/rpm'],
    ['g/(kW·h)', 'g/kWh g/kW-hr G/KWH', 'specificConsumption/g/(kW·h)'],
    ['lb/(hp·h)', 'lb/hph lb/hp-hr lb/hp/hr', 'specificConsumption/lb/(hp·h)'],
    ['PS', 'cv CV ps', 'power/PS'],
    ['in³', 'in3 in^3 cid', 'volume/in³'],
  ])('%s', (_, spellings, id) => {
    for (const spelling of spellings.split(' ')) expect(unitFor(spelling)?.id, spelling).toBe(id);
  });

  test('spaces', () => {
    expect(unitFor(' hp metric ')?.id).toBe('power/PS');
    expect(unitFor('deg F', 'temperature')?.id).toBe('temperature/°F');
    expect(unitFor('mm Hg', 'absolutePressure')?.id).toBe('absolutePressure/mmHg');
  });
});

describe('what is not forgiven', () => {
  test('mPa is not MPa, MV is not mV', () => {
    expect(unitFor('mPa')).toBeNull();
    expect(unitFor('MV')).toBeNull();
    expect(unitFor('MPa', 'gaugePressure')?.factor).toBe(1e6);
  });

  test('absolute and gauge spellings belong to their own kind alone', () => {
    for (const spelling of ['psia', 'kPa abs', 'bar(a)']) {
      expect(
        unitsFor(spelling).map((unit) => unit.kind),
        spelling,
      ).toEqual(['absolutePressure']);
    }
    for (const spelling of ['psig', 'bar(g)', 'kPa gauge']) {
      expect(
        unitsFor(spelling).map((unit) => unit.kind),
        spelling,
      ).toEqual(['gaugePressure']);
    }
  });

  test('a bare C or F is a temperature, never a difference', () => {
    expect(unitsFor('C').map((unit) => unit.kind)).toEqual(['temperature']);
    expect(unitsFor('F').map((unit) => unit.kind)).toEqual(['temperature']);
  });

  test('a flow whose reference air is not stated', () => {
    expect(unitFor('scfm')).toBeNull();
  });
});

test('without a kind: the first of the list; unitsFor gives them all', () => {
  expect(unitFor('Hz')?.kind).toBe('frequency');
  expect(unitFor('°C')?.kind).toBe('temperature');
  expect(unitsFor('psi').map((unit) => unit.kind)).toEqual([
    'absolutePressure',
    'gaugePressure',
    'pressureDifference',
  ]);
});

test('a value goes into the inside unit and back, in every unit', () => {
  fc.assert(
    fc.property(fc.constantFrom(...UNITS), fc.double({ min: -1e6, max: 1e6, noNaN: true }), (unit, value) => {
      const back = fromInside(toInside(value, unit), unit);
      // An offset of some hundred kelvin costs that many units in the last place.
      expect(Math.abs(back - value)).toBeLessThanOrEqual(
        1e-13 * Math.abs(value) + (4 * Number.EPSILON * unit.offset) / unit.factor + 1e-300,
      );
    }),
    { seed: 1, numRuns: 3000 },
  );
});

test('a unit may be named by id or spelling; an unknown one is a mistake of ours and throws', () => {
  expect(toInside(1, 'torque/N·m')).toBe(1);
  expect(toInside(20, 'C')).toBe(293.15);
  expect(() => toInside(1, 'parsec')).toThrow('unknown unit "parsec"');
});
