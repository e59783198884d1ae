import { blendOf, type Fuel, sparkAllowed } from '@pullbook/core/fuel';
import { toInside } from '@pullbook/core/quantity';
import { describe, expect, test } from 'vitest';

/**
 * What the trade runs: static compression ratio against boost on three fuels and coolings (common practice, from memory). No engine was measured for it, so the
 * table is printed beside ours and not a gate on single figures; what is asked is that ours ranks as the trade does, and that at the trade's ends ours finds
 * an engine that can be run.
 */
const TRADE = [
  { ratio: 8.25, uncooled: [8, 10], cooled: [12, 15], alcohol: [20, 30] },
  { ratio: 9.25, uncooled: [5, 7], cooled: [8, 12], alcohol: [15, 25] },
  { ratio: 10.25, uncooled: [4, 5], cooled: [7, 9], alcohol: [12, 20] },
  { ratio: 11.25, uncooled: null, cooled: [5, 7], alcohol: [10, 16] },
] as const;
type Kind = 'uncooled' | 'cooled' | 'alcohol';

const PUMP: Fuel = {
  ...blendOf([{ substance: 'gasoline', volumeShare: 1 }]),
  researchOctane: 97,
  motorOctane: 87,
};
const E85 = blendOf([
  { substance: 'ethanol', volumeShare: 0.85 },
  { substance: 'gasoline', volumeShare: 0.15 },
]);

/** Compressed at an efficiency of 70 % from 25 °C; a cooler of 75 % against that air. */
function charge(boostPsi: number, kind: Kind, compressionRatio: number) {
  const ambient = 99e3;
  const manifoldPressure = ambient + toInside(boostPsi, 'psi', 'gaugePressure');
  const rise = (298 * ((manifoldPressure / ambient) ** 0.2857 - 1)) / 0.7;
  return {
    engineSpeedRpm: 5500,
    manifoldPressure,
    manifoldTemperature: 298 + (kind === 'uncooled' ? 1 : 0.25) * rise,
    compressionRatio,
    exhaustPressure: 1.05 * ambient,
    lambda: 0.8,
  };
}
const sparkOf = (boostPsi: number, kind: Kind, ratio: number) =>
  sparkAllowed(charge(boostPsi, kind, ratio), kind === 'alcohol' ? E85 : PUMP);
/** Degrees of total advance that are run under boost on pump gasoline, and on E85 (common practice, no source). */
const RUN: Record<Kind, readonly [least: number, most: number]> = {
  uncooled: [16, 22],
  cooled: [16, 22],
  alcohol: [20, 26],
};
/** Degrees that are usually left to knock (common practice, no source). */
const KEPT_FROM_KNOCK = 2;
const DEGREE = Math.PI / 180;
const degrees = (angle: number) => (angle / DEGREE).toFixed(0);

describe('compression, boost and octane', () => {
  const cells = TRADE.flatMap(({ ratio, ...kinds }) =>
    (['uncooled', 'cooled', 'alcohol'] as const).flatMap((kind) => {
      const ends = kinds[kind];
      return ends === null
        ? []
        : [{ ratio, kind, ends, sparks: ends.map((psi) => sparkOf(psi, kind, ratio)) }];
    }),
  );

  test('at the most that the trade runs ours finds the spark that the trade has there', () => {
    const lines = cells.map(({ ratio, kind, ends, sparks }) => {
      const [low, high] = sparks.map(
        (one) =>
          `${degrees(one.low)} ${degrees(one.allowed)} ${degrees(one.high)}° of ${degrees(one.forBestTorque)}°, ${one.work.toFixed(2)}`,
      );
      return `${ratio}:1 ${kind.padEnd(8)} ${ends[0]} psi: ${low}; ${ends[1]} psi: ${high}`;
    });
    console.info(['Spark allowed (low, middle, high) of best, share of work:', ...lines].join('\n'));
    for (const { kind, sparks } of cells) {
      // Total advance that is run, 2° before knock: two tables of the trade that have to agree by way of ours, within what ours leaves open.
      const [least, most] = RUN[kind];
      const { low, high } = sparks[1]!;
      expect(high / DEGREE - KEPT_FROM_KNOCK).toBeGreaterThanOrEqual(least);
      expect(low / DEGREE - KEPT_FROM_KNOCK).toBeLessThanOrEqual(most);
    }
  });

  test('half as much boost again as the most that the trade runs takes degrees away', () => {
    for (const { ratio, kind, ends, sparks } of cells)
      expect(sparks[1]!.allowed - sparkOf(1.5 * ends[1], kind, ratio).allowed).toBeGreaterThan(2 * DEGREE);
  });

  test.each([7, 10, 14])('at %d psi: a cooler helps, and E85 more; less compression helps each', (psi) => {
    const lateness = (kind: Kind, ratio: number) => {
      const { forBestTorque, allowed } = sparkOf(psi, kind, ratio);
      return forBestTorque - allowed;
    };
    for (const { ratio } of TRADE) {
      expect(lateness('cooled', ratio)).toBeLessThanOrEqual(lateness('uncooled', ratio));
      if (psi === 14) expect(lateness('cooled', ratio)).toBeLessThan(lateness('uncooled', ratio) - DEGREE);
      expect(lateness('alcohol', ratio)).toBeLessThanOrEqual(lateness('cooled', ratio));
    }
    for (const kind of ['uncooled', 'cooled', 'alcohol'] as const)
      expect(lateness(kind, 8.25)).toBeLessThanOrEqual(lateness(kind, 11.25));
  });
});
