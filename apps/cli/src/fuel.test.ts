import { describe, expect, test } from 'vitest';
import { captured, capturedJson } from './testing/captured.ts';

const ASKED =
  '--power 500hp --fuel e85 --induction boosted --injectors 8 --fuel-pressure 4bar --engine-speed 6500rpm';
const fuel = (words: string, ...more: string[]) => capturedJson(['fuel', ...words.split(' '), ...more]);

describe('pullbook fuel', () => {
  test('500 hp of E85 under boost: by hand from 0.85 lb/(hp·h), eight injectors open for 85 %', async () => {
    const { code, json } = await fuel(ASKED);
    expect(code).toBe(0);
    expect(json.schemaVersion).toBe(1);
    expect(json.fuelFlowKgPerH).toBeCloseTo(500 * 0.85 * 0.45359237, 6);
    expect(json.stoichiometricAirFuelRatio).toBeCloseTo(9.8, 2);
    expect(json.dutyPercent).toBe(85);
    const each = (425 * 453.59237) / 60 / 8 / 0.85 / 0.7824;
    expect(json.injectorFlowNeededCcPerMin).toBeCloseTo(each, 6);
    expect(json.injectorFlowNeededCcPerMinAtRatedPressure).toBeCloseTo(each * Math.sqrt(3 / 4), 6);
    expect(json.openTimeMs).toBeCloseTo((0.85 * 120_000) / 6500, 9);
    expect(json.fuelFlowKgPerHLow).toBeLessThan(json.fuelFlowKgPerH);
    expect(json.fuelFlowKgPerHHigh).toBeGreaterThan(json.fuelFlowKgPerH);
  });

  test('with an injector at hand: the duty it needs, its dead time in it, and that it is too small', async () => {
    const { json } = await fuel(
      '--power 520hp --induction boosted --injectors 6 --injector-flow 65lb/h --injector-pressure 3bar --fuel-pressure 3bar --engine-speed 6700rpm --dead-time 1ms',
    );
    expect(json.dutyPercent).toBeCloseTo(100 * (312 / 390 + 6700 / 120_000), 6);
    expect(json.remarks.map(({ code }: { code: string }) => code)).toContain('injectors-too-small');
  });

  test('pressure held above open air: boost takes from what is across', async () => {
    const { json } = await fuel(`${ASKED} --reference open-air --boost 10psi`);
    expect(json.pressureAcrossKpa).toBeCloseTo(400 - 68.94757, 4);
    expect(json.pumpPressureKpa).toBe(400);
  });

  test('air in place of power: fuel and power follow from lambda and consumption that are stated', async () => {
    const { json } = await fuel('--air-flow 360kg/h --lambda 1', '--consumption', '250 g/kWh');
    expect(json.fuelFlowKgPerH).toBeCloseTo(360 / 14.6, 2);
    expect(json.powerKw).toBeCloseTo(json.fuelFlowKgPerH / 0.25, 6);
    expect(json.powerKwLow).toBe(json.powerKwHigh);
  });

  test('for a person: figures in the units asked for, each with what it rests on', async () => {
    const { code, out } = await captured(['fuel', ...ASKED.split(' '), '--units', 'us']);
    expect(code).toBe(0);
    expect(out).toContain('425.0 lb/h (375.0 to 475.0)');
    expect(out).toContain('common practice, no source');
    const si = await captured(['fuel', ...ASKED.split(' '), '--units', 'si', '--decimal', ',']);
    expect(si.out).toContain('192,8 kg/h (170,1 to 215,5)');
  });

  test.each([
    ['--power 500hp --fuel wine', 'fuel-not-known', 'Known are gasoline'],
    ['--power 500', 'missing-unit', 'has no unit'],
    ['--power 500hp --duty 120%', 'duty-impossible', '85%'],
    ['--power 500hp --fuel E120', 'shares-over-100', '100 % at most'],
    [
      '--power 500hp --injectors 8 --injector-flow 42lb/h',
      'injector-without-pressure',
      '--injector-pressure 3bar',
    ],
    ['--power 500hp --injector-flow 42lb/h --fuel-pressure 3bar', 'injectors-missing', '--injectors 8'],
    ['--power 500hp --air-flow 1kg/s', 'power-or-air', 'Give one of them'],
    ['--induction boosted', 'power-or-air', '--power 500hp'],
    ['--power 500hp --induction warp', 'induction-not-known', 'turbocharged'],
    [
      '--power 500hp --induction boosted --fuel-pressure 0.5bar --reference open-air --boost 10psi',
      'nothing-across',
      'follows boost',
    ],
    ['--power 500hp --dead-time 1ms', 'dead-time-without-speed', '--engine-speed'],
    ['--power 500hp --lambda 12', 'value-impossible', '0.3 to 3'],
    ['--power unknown', 'not-a-number', 'as a number and a unit'],
    ['--power 0hp', 'value-impossible', '0.1 to 20,000 kW'],
    ['--power 1e9hp', 'value-impossible', '0.1 to 20,000 kW'],
    ['--power 500hp --induction na --boost 10psi', 'boost-without-supercharger', '--induction boosted'],
  ])('%s: %s', async (words, name, says) => {
    const { code, json } = await fuel(words);
    expect(code).toBe(1);
    expect(json.error.code).toBe(name);
    expect(json.error.message).toContain(says);
  });
});
