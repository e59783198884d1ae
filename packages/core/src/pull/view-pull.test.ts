import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { powerFromTorque } from '../quantity/index.ts';
import {
  inventedChannel,
  inventedPoints,
  inventedPull,
  inventedSweep,
  inventedTorque,
} from './invented-pull.testing.ts';
import { defaultRecipe } from './recipe.ts';
import { viewPull } from './view-pull.ts';

const observed = defaultRecipe('observed');
const noise = { torqueNoise: 0.004, speedNoiseRpm: 4 };

/** Top of the invented engine's power, worked from its formula: d/dn of n (400 - 2e-5 (n - 4500)²) = 0. */
const TRUE_PEAK_RPM = (() => {
  const [a, b, c] = [-6e-5, 4 * 2e-5 * 4500, 400 - 2e-5 * 4500 ** 2];
  return (-b - Math.sqrt(b * b - 4 * a * c)) / (2 * a);
})();
const TRUE_PEAK_POWER = powerFromTorque(inventedTorque(TRUE_PEAK_RPM), TRUE_PEAK_RPM);

describe('a logged sweep', () => {
  test('gives the peak of the engine that made it, within its spread', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const { channels } = inventedSweep({ torqueAt: inventedTorque, ...noise, seed });
        const view = viewPull(inventedPull(channels), observed);
        const { value, valueSpread, atRpm, atRpmSpread } = view.peakPower!;
        // Four spreads and half a per mille: power is not a parabola, and this is asked of every seed.
        expect(Math.abs(value - TRUE_PEAK_POWER)).toBeLessThan(4 * valueSpread! + 5e-4 * TRUE_PEAK_POWER);
        expect(Math.abs(atRpm - TRUE_PEAK_RPM)).toBeLessThan(4 * atRpmSpread! + 20);
      }),
      { seed: 20260314, numRuns: 25 },
    );
  });

  test('gives the curve of the engine that made it', () => {
    const { channels } = inventedSweep({ torqueAt: inventedTorque, ...noise });
    const { curve } = viewPull(inventedPull(channels), observed);
    const torque = curve!.channels.get('torque')!;
    curve!.engineSpeedRpm.forEach((speed, node) => {
      // Bins hold eight rows of 0.4 %; the first ones also what is left of the settling torque.
      if (speed > 2650) expect(Math.abs(torque[node]! / inventedTorque(speed) - 1)).toBeLessThan(0.008);
    });
  });

  test('shows a torque spike and leaves it out of the curve', () => {
    const { channels } = inventedSweep({ torqueAt: inventedTorque, ...noise });
    const clean = viewPull(inventedPull(channels), observed);
    const row = clean.window!.fromRow + 300;
    const spoilt = channels.map((channel) => ({ ...channel, values: channel.values.slice() }));
    spoilt[2]!.values[row] = spoilt[2]!.values[row]! + 150;
    const view = viewPull(inventedPull(spoilt), observed);
    expect(view.spikes.filter((spike) => spike.row === row).map((spike) => spike.meaning)).toEqual([
      'torque',
    ]);
    const off = view
      .curve!.channels.get('torque')!
      .map((value, node) => Math.abs(value - clean.curve!.channels.get('torque')![node]!));
    expect(Math.max(...off.filter(Number.isFinite))).toBeLessThan(1);
    expect(spoilt[2]!.values[row]).toBe(channels[2]!.values[row]! + 150);
  });

  test('an engine that climbs to the end is said to be still climbing', () => {
    const { channels } = inventedSweep({ torqueAt: (speed) => 300 + 0.04 * speed, ...noise });
    const view = viewPull(inventedPull(channels), observed);
    expect(view.peakPower!.stillClimbing).toBe(true);
    expect(view.remarks.map((one) => one.code)).toContain('power-still-climbing');
    expect(view.peakPower!.value / powerFromTorque(300 + 0.04 * 6484, 6484)).toBeCloseTo(1, 2);
  });

  test('a late channel comes back to its speed by its lag', () => {
    const { channels } = inventedSweep({
      torqueAt: inventedTorque,
      more: (speed) => ({ lambda: 0.9 - 1e-5 * (speed - 90) }),
    });
    const view = viewPull(inventedPull(channels), { ...observed, lags: { lambda: 0.3 } });
    const lambda = view.curve!.channels.get('lambda')!;
    const node = view.curve!.engineSpeedRpm.indexOf(4500);
    expect(lambda[node]!).toBeCloseTo(0.9 - 1e-5 * (4500 + 0.3 * 300 - 90), 6);
  });

  test('inertia is added only when asked for and known, and it is said which figure is shown', () => {
    const { channels } = inventedSweep({ torqueAt: inventedTorque });
    const sweep = { momentOfInertia: 0.4, inertiaCompensated: 'no' } as const;
    const plain = viewPull(inventedPull(channels, { sweep }), observed);
    const added = viewPull(inventedPull(channels, { sweep }), { ...observed, addInertia: true });
    const node = plain.curve!.engineSpeedRpm.indexOf(4500);
    const torqueOf = (view: typeof plain) => view.curve!.channels.get('torque')![node]!;
    // 0.40 kg·m² at 300 rpm/s hides 9.3 lb-ft (T = I · 2π/60 · dn/dt by hand: 12.566 N·m).
    expect(torqueOf(added) - torqueOf(plain)).toBeCloseTo(12.566, 2);
    expect(plain.remarks.map((one) => one.code)).toContain('inertia-left-out');
    expect(added.remarks.map((one) => one.code)).toContain('inertia-added');
    const unknown = viewPull(inventedPull(channels, { sweep: { ...sweep, inertiaCompensated: 'unknown' } }), {
      ...observed,
      addInertia: true,
    });
    expect(torqueOf(unknown)).toBe(torqueOf(plain));
    expect(unknown.remarks.map((one) => one.code)).toContain('inertia-not-added');
  });

  test('boost is taken from an absolute manifold pressure where the barometer is known', () => {
    const { channels } = inventedSweep({
      torqueAt: inventedTorque,
      more: (speed) => ({ manifoldPressure: 99e3 + 70e3 * (speed / 6500) ** 2 }),
    });
    const view = viewPull(inventedPull(channels), defaultRecipe());
    const node = view.curve!.engineSpeedRpm.indexOf(6000);
    expect(view.curve!.channels.get('boost')![node]! / (70e3 * (6000 / 6500) ** 2)).toBeCloseTo(1, 3);
    expect(view.remarks.map((one) => one.code)).toContain('supercharged');
  });

  test('the pull itself is not altered', () => {
    const { channels } = inventedSweep({ torqueAt: inventedTorque, ...noise });
    const before = channels.map((channel) => channel.values.slice());
    viewPull(inventedPull(channels), { ...defaultRecipe(), lags: { torque: 0.1 } });
    expect(channels.map((channel) => channel.values)).toEqual(before);
  });
});

describe('settled points', () => {
  test('the order of the rows does not matter', () => {
    const speeds = Array.from({ length: 17 }, (_, row) => 2500 + 250 * row);
    const sorted = viewPull(inventedPull(inventedPoints(speeds, inventedTorque)), observed);
    fc.assert(
      fc.property(fc.shuffledSubarray(speeds, { minLength: 17 }), (shuffled) => {
        const view = viewPull(inventedPull(inventedPoints(shuffled, inventedTorque)), observed);
        expect(view.curve).toEqual(sorted.curve);
        expect(view.peakPower).toEqual(sorted.peakPower);
      }),
      { seed: 20260314, numRuns: 20 },
    );
  });

  test('rows of one speed are averaged with a remark', () => {
    const channels = [
      inventedChannel('engineSpeed', [3000, 3500, 3500, 4000]),
      inventedChannel('torque', [300, 310, 314, 320]),
    ];
    const view = viewPull(inventedPull(channels), observed);
    expect([...view.curve!.channels.get('torque')!]).toEqual([300, 312, 320]);
    expect(view.remarks.map((one) => one.code)).toContain('speed-given-twice');
  });

  test('a scaled table scales its power', () => {
    const speeds = Array.from({ length: 9 }, (_, row) => 2500 + 500 * row);
    const [one, other] = [1, 1.07].map((factor) =>
      viewPull(inventedPull(inventedPoints(speeds, (speed) => factor * inventedTorque(speed))), observed),
    );
    expect(other!.peakPower!.value / one!.peakPower!.value).toBeCloseTo(1.07, 12);
  });
});

describe('what cannot make a curve', () => {
  test('a summary keeps its printed peak, in the standard asked for where that can be reached', () => {
    const summary = { peakPower: 250e3, peakPowerRpm: 6000, peakTorque: null, peakTorqueRpm: null };
    const base = { form: 'summary', channels: [], summary } as const;
    const unknown = viewPull(
      inventedPull([], { ...base, channels: [], carried: { standard: 'unknown', factor: null } }),
      defaultRecipe(),
    );
    expect(unknown).toMatchObject({
      curve: null,
      peakPower: { value: 250e3, atRpm: 6000, stillClimbing: false },
      correction: { reached: false },
    });
    const known = viewPull(
      inventedPull([], { ...base, channels: [], carried: { standard: 'sae-j607', factor: 1.04 } }),
      observed,
    );
    expect(known.peakPower!.value).toBeCloseTo(250e3 / 1.04, 6);
  });

  test('no engine speed, no torque, empty and absurd columns: no curve or no power, and a reason', () => {
    const torque = inventedChannel('torque', [300, 310, 320]);
    const cases = [
      [[torque], 'no-engine-speed'],
      [[inventedChannel('engineSpeed', [Number.NaN, Number.NaN, Number.NaN]), torque], 'too-few-rows'],
      [[inventedChannel('engineSpeed', []), inventedChannel('torque', [])], 'too-few-rows'],
      [[inventedChannel('engineSpeed', [-5, 0, -1]), torque], 'too-few-rows'],
      [
        [
          inventedChannel('engineSpeed', [3000, 4000, 5000]),
          inventedChannel('torque', [Number.NaN, Number.NaN, Number.NaN]),
        ],
        'no-row-counts',
      ],
      [
        [inventedChannel('engineSpeed', [3000, 4000, 5000]), inventedChannel('lambda', [0.8, 0.8, 0.8])],
        'no-torque',
      ],
    ] as const;
    for (const [channels, code] of cases) {
      const view = viewPull(inventedPull([...channels]), defaultRecipe());
      expect(view.peakPower).toBeNull();
      expect(view.remarks.filter((one) => one.level === 'refusal').map((one) => one.code)).toEqual([code]);
    }
  });

  test('an impossible figure is taken as missing, and counted', () => {
    const channels = inventedPoints([3000, 3500, 4000], (speed) => (speed === 3500 ? 1e300 : 300));
    const view = viewPull(inventedPull(channels), observed);
    expect([...view.curve!.engineSpeedRpm]).toEqual([3000, 4000]);
    expect(view.remarks.find((one) => one.code === 'impossible-values')?.message).toContain('in row 2');
  });

  test('a column in the wrong unit is said to be unusual', () => {
    const channels = inventedPoints([3000, 3500, 4000], () => 30e3);
    expect(viewPull(inventedPull(channels), observed).remarks.map((one) => one.code)).toContain(
      'outside-typical',
    );
  });
});
