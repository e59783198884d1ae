import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gridSamples } from './grid-samples.ts';
import type { ChannelMeaning } from './model.ts';

const grid = (speeds: number[], values: number[], width: number | 'adapted' = 'adapted') =>
  gridSamples(
    {
      speedRpm: Float64Array.from(speeds),
      channels: new Map<ChannelMeaning, Float64Array>([['torque', Float64Array.from(values)]]),
      rows: speeds.map((_, row) => row),
    },
    width,
  );

const evenly = (from: number, to: number, step: number) =>
  Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, row) => from + row * step);

describe('bins of a logged sweep', () => {
  test.each([
    [6, 50],
    [16, 50],
    [30, 100],
    [60, 250],
  ])('rows %i rpm apart take bins of %i rpm', (spacing, width) => {
    const speeds = evenly(2500, 6500, spacing);
    expect(
      grid(
        speeds,
        speeds.map(() => 1),
      ).curve.binWidthRpm,
    ).toBe(width);
  });

  test('nodes are whole multiples of the width, and a straight line comes back exactly, however bins are filled', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 2500, max: 6500, noNaN: true }), { minLength: 300, maxLength: 900 }),
        (random) => {
          const speeds = [...random].sort((a, b) => a - b);
          const { curve } = grid(
            speeds,
            speeds.map((speed) => 100 + 0.05 * speed),
            100,
          );
          const torque = curve.channels.get('torque')!;
          curve.engineSpeedRpm.forEach((node, bin) => {
            expect(node % 100).toBe(0);
            if (Number.isFinite(torque[bin]!)) expect(torque[bin]!).toBeCloseTo(100 + 0.05 * node, 6);
          });
        },
      ),
      { seed: 20260314, numRuns: 40 },
    );
  });

  test('an empty bin stays empty and its neighbours do not fill it', () => {
    const speeds = evenly(2500, 6500, 6).filter((speed) => speed < 4020 || speed > 4090);
    const { curve } = grid(
      speeds,
      speeds.map(() => 300),
    );
    const at4050 = curve.engineSpeedRpm.indexOf(4050);
    expect(curve.count[at4050]).toBe(0);
    expect(curve.channels.get('torque')![at4050]).toBeNaN();
  });

  test('fewer than three rows make no mean', () => {
    const speeds = evenly(2500, 6500, 6);
    const values = speeds.map((speed) =>
      speed > 4030 && speed < 4070 && speed % 4 !== 0 ? Number.NaN : 300,
    );
    const lone = speeds.map((speed, row) =>
      Math.abs(speed - 4050) <= 25 && row % 4 !== 0 ? Number.NaN : values[row]!,
    );
    const { curve } = grid(speeds, lone);
    expect(curve.channels.get('torque')![curve.engineSpeedRpm.indexOf(4050)]).toBeNaN();
  });

  test('a width set by hand is kept, with a caution where it leaves single rows', () => {
    const speeds = evenly(2500, 6500, 40);
    const { curve, remarks } = grid(
      speeds,
      speeds.map(() => 300),
      50,
    );
    expect(curve.binWidthRpm).toBe(50);
    expect(remarks.map((one) => one.code)).toEqual(['few-rows-a-bin']);
  });

  test('no bin reaches more than a quarter of its width beyond the rows', () => {
    const speeds = evenly(2514, 6486, 6);
    const { curve } = grid(
      speeds,
      speeds.map(() => 300),
    );
    expect(curve.engineSpeedRpm[0]).toBe(2550);
    expect(curve.engineSpeedRpm.at(-1)).toBe(6450);
  });
});
