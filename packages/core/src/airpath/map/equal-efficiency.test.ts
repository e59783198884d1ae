import { describe, expect, test } from 'vitest';
import type { FittedMap } from '../model.ts';
import { equalEfficiency } from './equal-efficiency.ts';
import { fitMap } from './fit-map.ts';
import { efficiencyOn, pressureRatioOn, speedLineAt } from './speed-line.ts';

/** Nearest speed at which the line goes through a place, by halving: at one flow more speed is more pressure. */
function speedThrough(map: FittedMap, flow: number, pressureRatio: number): number {
  let [low, high] = [map.measuredSpeedRpm![0] * 0.98, map.measuredSpeedRpm![1] * 1.02];
  for (let halving = 0; halving < 50; halving++) {
    const middle = (low + high) / 2;
    if (pressureRatioOn(speedLineAt(map, middle), flow) < pressureRatio) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

const map = (() => {
  const points = [30_000, 40_000, 50_000, 60_000].flatMap((speedRpm) =>
    [0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9].map((share) => {
      const speed = speedRpm / 50_000;
      const head = 1 - 0.9 * Math.abs((share - 0.5) / 0.5) ** 2.2;
      // Best at 45,000: the better region is an island.
      const best = 0.76 - 0.5 * (speed - 0.9) ** 2;
      return {
        flow: 0.6 * share * speed,
        pressureRatio: (1 + 0.24 * head * speed * speed) ** 3.5,
        speedRpm,
        efficiency: best * (1 - 1.5 * (share - 0.58) ** 2),
      };
    }),
  );
  const fitted = fitMap({
    id: 'map',
    name: 'island',
    form: 'points',
    reference: { pressure: 101_325, temperature: 288.15 },
    geometry: { wheelExitDiameter: 0.12, wheelInletDiameter: null, blades: null, backsweep: null },
    points,
    leftEnd: 'surge',
    origin: 'data sheet',
    notes: '',
    invented: true,
    createdAt: '2026-01-01T00:00:00Z',
  });
  if (!fitted.ok) throw new Error(fitted.remarks[0]?.message);
  return fitted.value;
})();

describe('lines of equal efficiency', () => {
  test('the efficiency on them is the level', () => {
    const paths = equalEfficiency(map, 0.68);
    expect(paths.length).toBeGreaterThan(0);
    for (const path of paths) {
      expect(path.flow.length).toBe(path.pressureRatio.length);
      for (let place = 0; place < path.flow.length; place += 5) {
        const speed = speedThrough(map, path.flow[place]!, path.pressureRatio[place]!);
        expect(Math.abs(efficiencyOn(speedLineAt(map, speed), path.flow[place]!) - 0.68)).toBeLessThan(2e-3);
      }
    }
  });

  test('they lie between surge and choke of the measured speeds', () => {
    const [low, high] = map.measuredSpeedRpm!;
    for (const { flow, pressureRatio } of equalEfficiency(map, 0.65)) {
      expect(Math.min(...flow)).toBeGreaterThanOrEqual(speedLineAt(map, low).surgeFlow);
      expect(Math.max(...flow)).toBeLessThanOrEqual(speedLineAt(map, high).chokeFlow);
      expect(Math.max(...pressureRatio)).toBeLessThanOrEqual(
        speedLineAt(map, high).highestPressureRatio + 1e-9,
      );
    }
  });

  test('an island is closed', () => {
    const islands = equalEfficiency(map, 0.745);
    expect(islands.length).toBe(1);
    const { flow, pressureRatio } = islands[0]!;
    expect(flow.at(-1)).toBe(flow[0]);
    expect(pressureRatio.at(-1)).toBe(pressureRatio[0]);
  });

  test('a level that nothing reaches has none', () => {
    expect(equalEfficiency(map, 0.9)).toEqual([]);
  });
});
