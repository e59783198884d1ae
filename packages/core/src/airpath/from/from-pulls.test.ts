import { describe, expect, test } from 'vitest';
import { testSheet } from '../../combination/test-sheet.ts';
import { type Channel, defaultRecipe, type Pull, viewPull } from '../../pull/index.ts';
import { inventedChannel, inventedPull } from '../../pull/invented-pull.testing.ts';
import { dryAir } from '../match/match-input.testing.ts';
import { baselineFromPulls, type ViewedPull } from './from-pulls.ts';
import { baselineFromTable } from './from-table.ts';
import { keyOfBaseline } from './prior-spread.ts';

const SHEET = testSheet({
  shortBlock: { cylinders: 6, bore: '96 mm', stroke: '88 mm', compressionRatio: 9.5 },
  fuel: { stoichiometricAirFuelRatio: 14.6 },
});
const SPEEDS = [2500, 3000, 3500, 4000, 4500, 5000, 5500, 6000];
const TORQUE = SPEEDS.map((speed) => 380 - ((speed - 4500) / 150) ** 2);
/** Fuel of a pull that makes 300 g for each kWh. */
const FUEL = SPEEDS.map((speed, node) => ((TORQUE[node]! * speed * Math.PI) / 30 / 3.6e6) * 0.3);
const LAMBDA = SPEEDS.map(() => 0.87);

const torqueOnly = (torque = TORQUE): Channel[] => [
  inventedChannel('engineSpeed', SPEEDS),
  inventedChannel('torque', torque),
];
const withFuel = (): Channel[] => [
  ...torqueOnly(),
  inventedChannel('fuelFlow', FUEL),
  inventedChannel('lambda', LAMBDA),
];

function viewed(
  channels: Channel[],
  changes: Partial<Pull> = {},
  correction: 'observed' | 'sae-j607' = 'observed',
): ViewedPull {
  const pull = inventedPull(channels, changes);
  return { pull, view: viewPull(pull, defaultRecipe(correction)) };
}

function baseline(...pulls: ViewedPull[]) {
  const made = baselineFromPulls(pulls, SHEET);
  if (!made.ok) throw new Error(made.remarks[0]?.message);
  return { ...made.value, codes: made.remarks.map(({ code }) => code) };
}

describe('baselineFromPulls', () => {
  test('the same pulls have the same key in another book, where their ids are others; another curve has another', () => {
    const named = (id: string, channels = withFuel()) => keyOfBaseline(baseline(viewed(channels, { id })));
    expect(named('here')).toBe(named('there'));
    expect(named('here', torqueOnly())).not.toBe(named('here'));
  });

  test('fuel and lambda give the air: fuel × lambda × the stoichiometric ratio', () => {
    const made = baseline(viewed(withFuel()));
    expect(made.airBasis).toBe('fuel and mixture');
    expect(made.origin).toBe('measured');
    made.engineSpeedRpm.forEach((speed, node) => {
      const row = SPEEDS.indexOf(speed);
      expect(made.airFlow[node]!).toBeCloseTo(FUEL[row]! * 0.87 * 14.6, 9);
      expect(made.brakePower[node]!).toBeCloseTo((TORQUE[row]! * speed * Math.PI) / 30, 6);
    });
  });

  test('an air meter goes before fuel; without either the air follows from power, and says what that is worth', () => {
    const meter = SPEEDS.map((speed) => speed * 4e-5);
    const metered = baseline(viewed([...withFuel(), inventedChannel('airFlow', meter)]));
    expect(metered.airBasis).toBe('air flow');
    expect(metered.airFlow[3]!).toBeCloseTo(meter[SPEEDS.indexOf(metered.engineSpeedRpm[3]!)]!, 9);
    const bare = baseline(viewed(torqueOnly()));
    expect(bare.airBasis).toBe('torque and efficiency');
    expect(bare.codes).toContain('air-from-power');
    // Common practice: 9.5 to 10.5 hp for each lb/min at the crankshaft of a good engine; here 8 to 11.
    const perPoundAMinute = bare.brakePower[4]! / 745.7 / ((bare.airFlow[4]! * 60) / 0.45359237);
    expect(perPoundAMinute).toBeGreaterThan(8);
    expect(perPoundAMinute).toBeLessThan(11);
  });

  test('fuel without lambda takes the one noted as aimed at, else a usual one, and says which', () => {
    const fuelOnly = () => [...torqueOnly(), inventedChannel('fuelFlow', FUEL)];
    const noted = baseline(viewed(fuelOnly(), { tune: { targetLambda: '0,90' } }));
    expect(noted.airFlow[2]! / FUEL[2]!).toBeCloseTo(0.9 * 14.6, 9);
    const usual = baseline(viewed(fuelOnly()));
    expect(usual.airFlow[2]! / FUEL[2]!).toBeCloseTo(0.87 * 14.6, 9);
    expect(usual.codes).toContain('lambda-assumed');
  });

  test('corrected figures come back to what was observed', () => {
    const corrected = viewed(withFuel(), {}, 'sae-j607');
    const factor = corrected.view.correction.factor!;
    expect(factor).toBeGreaterThan(1.02);
    expect(corrected.view.curve!.channels.get('power')![2]!).not.toBeCloseTo(
      baseline(corrected).brakePower[2]!,
      0,
    );
    expect(baseline(corrected).brakePower[2]!).toBeCloseTo(baseline(viewed(withFuel())).brakePower[2]!, 6);
    const carried = viewed(withFuel(), { carried: { standard: 'sae-j1349', factor: 1.05 } });
    expect(baseline(carried).brakePower[2]!).toBeCloseTo(
      baseline(viewed(withFuel())).brakePower[2]! / 1.05,
      6,
    );
  });

  test('several pulls are their mean at the speeds they share', () => {
    const stronger = viewed(torqueOnly(TORQUE.map((torque) => 1.02 * torque)), { id: 'second' });
    const made = baseline(viewed(torqueOnly()), stronger);
    expect(made.brakePower[1]!).toBeCloseTo(1.01 * baseline(viewed(torqueOnly())).brakePower[1]!, 6);
    expect(made.pullIds).toEqual(['invented', 'second']);
  });

  /** Heywood eq. 13.6 from memory: 0.97 + 0.15 n + 0.05 n² bar at 4,000 r/min is 2.37 bar. */
  test('friction not known is Barnes-Moss', () => {
    const made = baseline(viewed(torqueOnly()));
    const node = made.engineSpeedRpm.indexOf(4000);
    const displacement = 6 * (Math.PI / 4) * 0.096 ** 2 * 0.088;
    expect(made.frictionPower[node]!).toBeCloseTo((2.37e5 * displacement * 4000) / 120, 3);
    expect(made.codes).toContain('friction-assumed');
  });

  test('manifold pressure and charge temperature are taken where they were logged', () => {
    const made = baseline(
      viewed([
        ...withFuel(),
        inventedChannel(
          'manifoldPressure',
          SPEEDS.map(() => 97_500),
        ),
        inventedChannel(
          'chargeTemperature',
          SPEEDS.map(() => 303),
        ),
      ]),
    );
    expect(made.manifoldPressure[0]).toBeCloseTo(97_500, 6);
    expect(made.manifoldTemperature[0]).toBe(303);
    expect(made.codes).not.toContain('manifold-pressure-assumed');
  });

  test('a filling that no engine has is named with its speed', () => {
    const tenfold = [
      ...torqueOnly(),
      inventedChannel(
        'fuelFlow',
        FUEL.map((one) => 10 * one),
      ),
      inventedChannel('lambda', LAMBDA),
    ];
    expect(baseline(viewed(tenfold)).codes).toContain('filling-odd');
    expect(baseline(viewed(withFuel())).codes).not.toContain('filling-odd');
  });

  test.each([
    ['no pulls', [], 'no-baseline-pulls'],
    [
      'a factor that is not known',
      [viewed(withFuel(), { carried: { standard: 'unknown', factor: null } })],
      'baseline-factor-unknown',
    ],
    ['no weather', [viewed(withFuel(), { weather: null })], 'no-weather'],
  ])('%s: refused', (_, pulls, code) => {
    expect(baselineFromPulls(pulls, SHEET)).toMatchObject({ ok: false, remarks: [{ code }] });
  });
});

describe('baselineFromTable', () => {
  const table = {
    engineSpeedRpm: [4000, 2000, 6000],
    brakePower: [120e3, 55e3, 160e3],
    airFlow: [0.13, 0.06, 0.18],
    frictionPower: [14e3, 5e3, 30e3],
    manifoldPressure: null,
    manifoldTemperature: null,
    lambda: null,
    air: dryAir(99_000, 298.15),
    displacement: 0.003,
    compressionRatio: 10,
  };

  test('rows are put in order, and what is given stands', () => {
    const made = baselineFromTable(table);
    if (!made.ok) throw new Error(made.remarks[0]?.message);
    expect(made.value.engineSpeedRpm).toEqual([2000, 4000, 6000]);
    expect(made.value.airFlow).toEqual([0.06, 0.13, 0.18]);
    expect(made.value.airBasis).toBe('given');
    expect(made.value.manifoldTemperature).toEqual([298.15, 298.15, 298.15]);
    expect(made.remarks.map(({ code }) => code)).toEqual([
      'manifold-pressure-assumed',
      'manifold-temperature-assumed',
    ]);
  });

  test.each([
    [
      { engineSpeedRpm: [4000], brakePower: [1e5], airFlow: [0.1], frictionPower: [1e4] },
      'baseline-too-short',
    ],
    [{ engineSpeedRpm: [4000, 4000, 6000] }, 'baseline-speed-twice'],
    [{ brakePower: [120e3, -5, 160e3] }, 'baseline-not-above-zero'],
    [{ airFlow: [0.13, Number.NaN, 0.18] }, 'baseline-not-above-zero'],
  ])('a fault is refused and named: %j', (changes, code) => {
    expect(baselineFromTable({ ...table, ...changes })).toMatchObject({ ok: false, remarks: [{ code }] });
  });
});
