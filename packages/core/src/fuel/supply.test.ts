import { describe, expect, test } from 'vitest';
import { readSheet } from '../combination/index.ts';
import { toInside } from '../quantity/index.ts';
import { fuelOfSheet, isFuelTold } from './fuel-of-sheet.ts';
import { GASOLINE } from './gasoline.ts';
import { injectorDuty, pressureAcross } from './injectors.ts';
import { pumpCapacity, pumpPressure } from './pumps.ts';
import { fuelSupplyOf } from './supply.ts';

function sheetOf(sections: Record<string, Record<string, unknown>>) {
  const read = readSheet({ schemaVersion: 1, name: 'test', ...sections });
  if (!read.ok) throw new Error(read.remarks.map(({ message }) => message).join('\n'));
  return read.value;
}
const codesOf = (remarks: readonly { code: string }[]) => remarks.map(({ code }) => code);
const supplyOf = (sections: Record<string, Record<string, unknown>>) =>
  fuelSupplyOf(sheetOf(sections), { induction: 'centrifugal' });

describe('the fuel of a sheet', () => {
  test('shares win over the name, and what is stated over what follows', () => {
    const { fuel, assumptions } = fuelOfSheet(
      sheetOf({ fuel: { name: 'E85', ethanolShare: '70 %', density: '770 kg/m3', researchOctane: '104' } }),
    );
    expect(fuel.parts[0]).toEqual({ substance: 'ethanol', volumeShare: expect.closeTo(0.7, 12) });
    expect(fuel.density).toBe(770);
    expect(fuel.researchOctane).toBe(104);
    expect(fuel.from.density.source).toBe('on the sheet, not stated');
    expect(assumptions).toEqual([]);
  });

  test.each([
    ['pump petrol', 'gasoline'],
    ['race methanol from the drum', 'methanol'],
    ['local E85, summer', 'E85 as labelled'],
    ['98 RON', 'gasoline 98 RON'],
  ])('"%s" is %s', (name, expected) => {
    const sheet = sheetOf({ fuel: { name } });
    expect(isFuelTold(sheet)).toBe(true);
    expect(fuelOfSheet(sheet).fuel.name).toBe(expected);
  });

  test('a fuel that is not known, or none, is taken for gasoline and said', () => {
    expect(codesOf(fuelOfSheet(sheetOf({ fuel: { name: 'secret brew' } })).assumptions)).toEqual([
      'fuel-assumed',
    ]);
    expect(fuelOfSheet(sheetOf({})).fuel).toEqual(GASOLINE);
    expect(isFuelTold(sheetOf({ fuel: { name: 'secret brew' } }))).toBe(false);
  });

  test('of a fuel of which only the ratio is understood: the blend that has it, 85 % ethanol at 9.8', () => {
    const { fuel, assumptions } = fuelOfSheet(
      sheetOf({ fuel: { name: 'secret brew', stoichiometricAirFuelRatio: '9.8' } }),
    );
    expect(fuel.parts[0]).toEqual({ substance: 'ethanol', volumeShare: expect.closeTo(0.85, 3) });
    expect(fuel.stoichiometricAirFuelRatio).toBe(9.8);
    expect(codesOf(assumptions)).toEqual(['fuel-by-ratio']);
    const odd = fuelOfSheet(sheetOf({ fuel: { stoichiometricAirFuelRatio: '7.5' } })).fuel;
    expect(odd.parts[0]!.substance).toBe('methanol');
    expect(odd.latentHeat).toBeGreaterThan(926e3);
    expect(fuelOfSheet(sheetOf({ fuel: { stoichiometricAirFuelRatio: '17' } })).fuel.heatingValue).toBe(
      GASOLINE.heatingValue,
    );
  });

  test('ethanol and methanol of more than all: their proportion, and a caution', () => {
    const { fuel, assumptions } = fuelOfSheet(
      sheetOf({ fuel: { ethanolShare: '80 %', methanolShare: '40 %' } }),
    );
    expect(fuel.parts.map(({ volumeShare }) => volumeShare)).toEqual([
      expect.closeTo(2 / 3),
      expect.closeTo(1 / 3),
    ]);
    expect(codesOf(assumptions)).toEqual(['fuel-shares-over-all']);
  });
});

describe('what stands between tank and cylinder', () => {
  test('all told: nothing is taken', () => {
    const supply = supplyOf({
      fuelSystem: {
        type: 'direct injection',
        injectors: '8',
        injectorFlow: '60 lb/h',
        injectorFlowPressure: '3 bar',
        injectorDeadTime: '1 ms',
        fuelPressure: '4 bar',
        fuelReference: 'open air',
        pumpFlow: '300 L/h',
        pumpFlowPressure: '4 bar',
        pumpVoltage: '13.5 V',
        systemVoltage: '12 V',
        lineDiameter: '9 mm',
      },
      fuel: { name: 'gasoline', lambda: '0.8' },
    });
    expect(supply.assumptions).toEqual([]);
    expect(supply).toMatchObject({ mixes: 'direct', lambda: 0.8, lineDiameter: expect.closeTo(0.009, 12) });
    expect(supply.rail).toEqual({ pressure: 4e5, reference: 'open air' });
    // By hand: 60 lb/h by the root of (4 - 1) bar over 3 bar; 4 bar at the pump, 13.5 % less at 12 V; (13.5/12)² ms late.
    const boost = 1e5;
    expect(pressureAcross(supply.rail!, boost)).toBe(3e5);
    expect(pumpPressure(supply.rail!, boost)).toBe(4e5);
    expect(pumpCapacity(supply.pump!, 4e5) * 3.6e6).toBeCloseTo(300 * 0.865, 9);
    const duty = injectorDuty({
      fuelFlow: toInside(240, 'lb/h', 'massFlow'),
      injectors: supply.injectors!,
      fuel: GASOLINE,
      across: 3e5,
      engineSpeedRpm: 6000,
    });
    expect(duty).toBeCloseTo(0.5 + (1.265625e-3 * 6000) / 120, 9);
  });

  test('the least of it: one injector a cylinder, usual pressure and mixture, each said', () => {
    const supply = supplyOf({
      shortBlock: { cylinders: '6' },
      fuelSystem: { injectorFlow: '65 lb/h' },
      fuel: { name: 'gasoline' },
    });
    expect(supply.injectors!.count).toBe(6);
    expect(supply.rail).toEqual({ pressure: 3e5, reference: 'manifold' });
    expect(codesOf(supply.assumptions).sort()).toEqual([
      'fuel-pressure-assumed',
      'fuel-reference-assumed',
      'injector-count-assumed',
      'injector-pressure-assumed',
      'lambda-at-full-load-assumed',
    ]);
  });

  test('a volume of injectors is that of gasoline; E85 passes the root of its density more', () => {
    const supply = supplyOf({
      fuelSystem: { injectors: '1', injectorFlow: '600 cc/min', injectorFlowPressure: '3 bar' },
      fuel: { name: 'E85' },
    });
    expect(supply.injectors!.flow).toBeCloseTo((600e-6 / 60) * 745, 12);
    expect(supply.injectors!.ratedDensity).toBe(745);
  });

  test('a pump without its pressure says nothing, and that is said', () => {
    const supply = supplyOf({ fuelSystem: { pumpFlow: '300 L/h' } });
    expect(supply.pump).toBeNull();
    expect(codesOf(supply.assumptions)).toContain('pump-pressure-missing');
  });

  test('an empty sheet has no injectors, rail or pump', () => {
    expect(supplyOf({})).toMatchObject({ injectors: null, rail: null, pump: null, mixes: 'port' });
  });

  test('a carburettor has its own usual pressure', () => {
    const { rail, mixes } = supplyOf({ fuelSystem: { type: 'blow-through carburettor' } });
    expect(mixes).toBe('carburettor');
    expect(rail!.pressure).toBeCloseTo(toInside(6.5, 'psi', 'pressureDifference'), 9);
  });
});
