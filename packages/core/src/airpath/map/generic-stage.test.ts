import { describe, expect, test } from 'vitest';
import type { CompressorMap, MapPoint, StageGeometry } from '../model.ts';
import { fitMap } from './fit-map.ts';
import { efficiencyOn, pressureRatioOn, speedLineAt, workRiseOn } from './speed-line.ts';

const UNKNOWN: StageGeometry = {
  wheelExitDiameter: null,
  wheelInletDiameter: null,
  blades: null,
  backsweep: null,
};
const RATED: MapPoint = { flow: 0.45, pressureRatio: 1.9, speedRpm: 52_000, efficiency: 0.76 };

const ratedOf = (points: MapPoint[], geometry: Partial<StageGeometry> = {}): CompressorMap => ({
  id: 'map',
  name: 'rated',
  form: 'rated',
  reference: { pressure: 100_000, temperature: 298.15 },
  geometry: { ...UNKNOWN, ...geometry },
  points,
  leftEnd: 'not known',
  origin: 'data sheet',
  notes: '',
  invented: true,
  createdAt: '2026-01-01T00:00:00Z',
});

function fitted(map: CompressorMap) {
  const result = fitMap(map);
  if (!result.ok) throw new Error(result.remarks[0]?.message);
  return { map: result.value, codes: result.remarks.map(({ code }) => code) };
}

describe.each([
  ['no size known', {}],
  ['the wheel known', { wheelExitDiameter: 0.125, wheelInletDiameter: 0.085, blades: 12, backsweep: 0.5 }],
])('%s', (_, geometry) => {
  const { map } = fitted(ratedOf([RATED], geometry));

  test('the rated point is met', () => {
    const line = speedLineAt(map, RATED.speedRpm);
    expect(pressureRatioOn(line, RATED.flow)).toBeCloseTo(RATED.pressureRatio, 9);
    // Between two nodes of tip Mach number, so not to the last digit.
    expect(Math.abs(efficiencyOn(line, RATED.flow) - RATED.efficiency!)).toBeLessThan(1e-3);
  });

  test('falls right of its top at every speed, and is finite', () => {
    for (const speed of [0, 100, 5000, 20_000, 40_000, 52_000, 70_000, 120_000]) {
      const line = speedLineAt(map, speed);
      let before = Number.POSITIVE_INFINITY;
      for (let step = 0; step <= 50; step++) {
        const flow = line.peakFlow + ((line.chokeFlow - line.peakFlow) * step) / 50;
        const ratio = pressureRatioOn(line, flow);
        expect(Number.isFinite(ratio)).toBe(true);
        // The top stands between two nodes of tip Mach number.
        expect(ratio).toBeLessThanOrEqual(before * (1 + 1e-5));
        expect(workRiseOn(line, flow)).toBeGreaterThan(0);
        before = ratio;
      }
      expect(line.highestEfficiency).toBeLessThan(0.85);
    }
  });

  test('without speed no pressure; at low speed and much flow a restriction', () => {
    expect(speedLineAt(map, 0).highestPressureRatio).toBeLessThan(1 + 1e-5);
    const slow = speedLineAt(map, 15_000);
    expect(pressureRatioOn(slow, slow.chokeFlow)).toBeLessThan(1);
    expect(efficiencyOn(slow, slow.chokeFlow)).toBeLessThan(0);
  });
});

test('one point and no size: what was assumed is said', () => {
  expect(fitted(ratedOf([RATED])).codes).toEqual(['map-from-rated-point', 'map-diameter-assumed']);
  expect(fitted(ratedOf([{ ...RATED, efficiency: null }], { wheelExitDiameter: 0.12 })).codes).toEqual([
    'map-from-rated-point',
    'map-efficiency-guessed',
  ]);
});

test('sizes alone: a wide band', () => {
  const { map, codes } = fitted(ratedOf([], { wheelExitDiameter: 0.12 }));
  expect(codes).toEqual(['map-from-geometry']);
  expect(map.spread.head).toBe(0.2);
  expect(speedLineAt(map, 50_000).highestPressureRatio).toBeGreaterThan(1.4);
});

test('nothing at all is refused', () => {
  expect(fitMap(ratedOf([]))).toMatchObject({ ok: false, remarks: [{ code: 'map-without-points' }] });
});
