/**
 * What every fitted map keeps, over random tables: made by a formula of their own (parabolas of head over flow, none of the fit's), with
 * scatter, lines of unequal length, one line or many, left ends short of the top, with and without efficiencies.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CompressorMap, FittedMap, MapPoint } from '../model.ts';
import { fitMap } from './fit-map.ts';
import { efficiencyOn, pressureRatioOn, speedLineAt, workRiseOn } from './speed-line.ts';

const tables = fc.record({
  lines: fc.integer({ min: 1, max: 8 }),
  pointsOfLine: fc.integer({ min: 3, max: 14 }),
  lowestMach: fc.double({ min: 0.4, max: 1, noNaN: true }),
  machStep: fc.double({ min: 0.04, max: 0.1, noNaN: true }),
  diameter: fc.double({ min: 0.05, max: 0.4, noNaN: true }),
  isDiameterTold: fc.boolean(),
  head: fc.double({ min: 0.45, max: 0.75, noNaN: true }),
  choke: fc.double({ min: 0.04, max: 0.14, noNaN: true }),
  chokeOverMach: fc.double({ min: 0, max: 0.4, noNaN: true }),
  steepness: fc.double({ min: 1.6, max: 9, noNaN: true }),
  /** Ends of the measured stretch, as shares of choke. */
  from: fc.double({ min: 0.25, max: 0.65, noNaN: true }),
  to: fc.double({ min: 0.8, max: 0.95, noNaN: true }),
  unequal: fc.double({ min: 0, max: 0.15, noNaN: true }),
  efficiency: fc.option(fc.double({ min: 0.6, max: 0.85, noNaN: true }), { nil: null }),
  scatter: fc.double({ min: 0, max: 0.006, noNaN: true }),
  leftEnd: fc.constantFrom('surge' as const, 'not known' as const),
});
type Table = typeof tables extends fc.Arbitrary<infer T> ? T : never;

const SOUND = 340.29;
/** Share of choke flow at the highest pressure ratio. */
const TOP = 0.45;

function mapOf(table: Table): CompressorMap {
  const points: MapPoint[] = [];
  for (let line = 0; line < table.lines; line++) {
    const mach = table.lowestMach + line * table.machStep;
    const choke = table.choke * (1 + table.chokeOverMach * (mach - 1));
    for (let k = 0; k < table.pointsOfLine; k++) {
      const wave = Math.sin(37 * line + 11 * k);
      const from = table.from + table.unequal * Math.sin(5 * line);
      const share = from + ((table.to - from) * k) / (table.pointsOfLine - 1);
      const beyond = (share - TOP) / (1 - TOP);
      const head = table.head * (1 - (beyond > 0 ? 0.97 * beyond ** table.steepness : 0.3 * beyond ** 2));
      const pressureRatio = (1 + 0.4 * head * mach * mach) ** 3.5;
      points.push({
        flow: share * choke * mach * 1.225 * SOUND * table.diameter ** 2 * (1 + table.scatter * wave),
        pressureRatio: Math.max(1.001, pressureRatio * (1 + table.scatter * Math.cos(17 * line + 5 * k))),
        speedRpm: (60 * mach * SOUND) / (Math.PI * table.diameter),
        // Work falls straight with flow.
        efficiency:
          table.efficiency === null
            ? null
            : (table.efficiency * head) / table.head / (1.12 - 0.2 * share) + 0.002 * wave,
      });
    }
  }
  return {
    id: 'map',
    name: 'made',
    form: 'points',
    reference: { pressure: 101_325, temperature: 288.15 },
    geometry: {
      wheelExitDiameter: table.isDiameterTold ? table.diameter : null,
      wheelInletDiameter: null,
      blades: null,
      backsweep: null,
    },
    points,
    leftEnd: table.leftEnd,
    origin: 'data sheet',
    notes: '',
    invented: true,
    createdAt: '2026-01-01T00:00:00Z',
  };
}

function fitted(table: Table): FittedMap {
  const result = fitMap(mapOf(table));
  if (!result.ok) throw new Error(result.remarks.map(({ message }) => message).join('\n'));
  return result.value;
}

/** Speeds far below, over and far beyond the measured. */
function speedsOf(map: FittedMap): number[] {
  const [low, high] = map.measuredSpeedRpm!;
  return [0, 0.001 * low, 0.2 * low, 0.6 * low, low, (low + high) / 2, high, 1.3 * high, 3 * high];
}

const MADE = fc.sample(tables, { numRuns: 80, seed: 5 }).map((table) => ({ table, map: fitted(table) }));

const SHARES = Array.from({ length: 41 }, (_, place) => place / 40);

describe('over random tables', () => {
  test('pressure ratio falls right of its highest, is finite everywhere, and 1 at choke', () => {
    for (const { map } of MADE) {
      for (const speed of speedsOf(map)) {
        const line = speedLineAt(map, speed);
        const flows = SHARES.map((share) => line.peakFlow + share * (line.chokeFlow - line.peakFlow));
        const ratios = flows.map((flow) => pressureRatioOn(line, flow));
        for (const [place, ratio] of ratios.entries()) {
          expect(Number.isFinite(ratio)).toBe(true);
          if (place > 0) expect(ratio).toBeLessThanOrEqual(ratios[place - 1]! + 1e-12);
        }
        // Rounding just before a vertical line.
        expect(Math.abs(ratios.at(-1)! - 1)).toBeLessThan(1e-6);
        expect(pressureRatioOn(line, 2 * line.chokeFlow)).toBeCloseTo(1, 8);
        expect(line.highestPressureRatio).toBe(ratios[0]);
        expect(pressureRatioOn(line, 0)).toBeGreaterThanOrEqual(1);
        expect(pressureRatioOn(line, 0)).toBeLessThanOrEqual(
          speedLineAt(map, speed).highestPressureRatio * 3,
        );
      }
    }
  });

  test('surge lies left of the highest pressure ratio or on it, choke right of it', () => {
    for (const { map } of MADE) {
      for (const speed of speedsOf(map)) {
        const { surgeFlow, peakFlow, chokeFlow } = speedLineAt(map, speed);
        expect(surgeFlow).toBeGreaterThan(0);
        expect(surgeFlow).toBeLessThanOrEqual(peakFlow);
        expect(peakFlow).toBeLessThan(chokeFlow);
      }
    }
  });

  test('more speed: choke and the highest pressure ratio never fall; without speed there is no pressure', () => {
    for (const { map } of MADE) {
      const [, high] = map.measuredSpeedRpm!;
      let before = { chokeFlow: 0, top: 0 };
      for (let step = 0; step <= 60; step++) {
        const line = speedLineAt(map, (1.5 * high * step) / 60);
        // The top itself, also where surge lies right of it.
        const top = Math.max(...SHARES.map((share) => pressureRatioOn(line, share * line.chokeFlow)));
        expect(line.chokeFlow).toBeGreaterThanOrEqual(before.chokeFlow);
        expect(top).toBeGreaterThanOrEqual(before.top * (1 - 2e-3));
        before = { chokeFlow: line.chokeFlow, top };
      }
      expect(speedLineAt(map, 0).highestPressureRatio).toBeLessThan(1 + 1e-5);
    }
  });

  test('efficiency never above the highest of the points, nor below 0; work always above 0', () => {
    for (const { table, map } of MADE) {
      const told = mapOf(table).points.flatMap(({ efficiency }) => efficiency ?? []);
      const most = told.length === 0 ? 0.85 : Math.max(...told);
      for (const speed of speedsOf(map)) {
        const line = speedLineAt(map, speed);
        expect(line.highestEfficiency).toBeLessThanOrEqual(most + 1e-12);
        for (const share of [...SHARES, 1.5]) {
          const flow = share * line.chokeFlow;
          const efficiency = efficiencyOn(line, flow);
          expect(efficiency).toBeGreaterThanOrEqual(0);
          expect(efficiency).toBeLessThanOrEqual(line.highestEfficiency + 0.02);
          expect(efficiency).toBeLessThanOrEqual(most);
          expect(workRiseOn(line, flow)).toBeGreaterThan(0);
        }
      }
    }
  });

  test('it meets its own points, and says how well', () => {
    const rms: number[] = [];
    for (const { table, map } of MADE) {
      const { quality, spread } = map;
      rms.push(quality!.pressureRatioRms);
      expect(quality!.points).toBe(table.lines * table.pointsOfLine);
      expect(quality!.lines.length).toBe(table.lines);
      expect(quality!.pressureRatioRms).toBeLessThan(0.03);
      if (table.efficiency !== null) expect(quality!.efficiencyRms).toBeLessThan(0.03);
      else expect(spread.efficiency).toBeGreaterThanOrEqual(0.05);
    }
    expect(rms.toSorted((a, b) => a - b)[rms.length >> 1]).toBeLessThan(0.008);
  });
});
