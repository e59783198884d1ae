import { describe, expect, test } from 'vitest';
import type { CompressorMap, MapPoint } from '../model.ts';
import { fitMap } from './fit-map.ts';

/** Four lines as a maker prints them: flow kg/s, pressure ratio falling to choke, efficiency. */
const LINES = [30_000, 40_000, 50_000, 60_000].map((speedRpm) =>
  [0.45, 0.55, 0.65, 0.75, 0.85, 0.93].map((share): MapPoint => {
    const speed = speedRpm / 50_000;
    const head = 1 - 0.9 * Math.max(0, (share - 0.5) / 0.5) ** 2.2;
    return {
      flow: 0.6 * share * speed,
      pressureRatio: (1 + 0.24 * head * speed * speed) ** 3.5,
      speedRpm,
      efficiency: (0.74 * head) / (1.12 - 0.2 * share),
    };
  }),
);
const POINTS = LINES.flat();

const mapOf = (points: MapPoint[], changes: Partial<CompressorMap> = {}): CompressorMap => ({
  id: 'map',
  name: 'shop blower',
  form: 'points',
  reference: { pressure: 101_325, temperature: 288.15 },
  geometry: { wheelExitDiameter: 0.12, wheelInletDiameter: null, blades: null, backsweep: null },
  points,
  leftEnd: 'not known',
  origin: 'data sheet',
  notes: '',
  invented: true,
  createdAt: '2026-01-01T00:00:00Z',
  ...changes,
});

const changed = (place: number, change: Partial<MapPoint>): MapPoint[] =>
  POINTS.map((point, at) => (at === place ? { ...point, ...change } : point));

const codesOf = (map: CompressorMap) => fitMap(map).remarks.map(({ code }) => code);

test('the table itself is a map without a remark', () => {
  const fitted = fitMap(mapOf(POINTS));
  expect(fitted.ok).toBe(true);
  expect(fitted.remarks).toEqual([]);
});

describe('refused, with the point or line named', () => {
  test.each([
    ['a flow that is no number', changed(7, { flow: Number.NaN }), 'map-value-absurd', 'Point 8'],
    ['a speed of zero', changed(2, { speedRpm: 0 }), 'map-value-absurd', 'Point 3'],
    ['no speeds', POINTS.map((point) => ({ ...point, speedRpm: Number.NaN })), 'map-value-absurd', 'Point 1'],
    ['a speed in per cent', changed(2, { speedRpm: 60 }), 'map-speed-in-per-cent', 'Point 3'],
    ['boost over the inlet', changed(9, { pressureRatio: 0.6 }), 'map-pressure-ratio-below-1', 'Point 10'],
    ['a pressure in kPa', changed(9, { pressureRatio: 145 }), 'map-pressure-ratio-absurd', 'Point 10'],
    ['one efficiency in per cent', changed(4, { efficiency: 71 }), 'map-efficiency-mixed', 'Point 5'],
    [
      'all in per cent',
      POINTS.map((point) => ({ ...point, efficiency: 100 * point.efficiency! })),
      'map-efficiency-in-per-cent',
      'Point 1',
    ],
    ['an efficiency above all stages', changed(4, { efficiency: 0.98 }), 'map-efficiency-absurd', 'Point 5'],
    ['an efficiency below 0', changed(4, { efficiency: -0.2 }), 'map-value-absurd', 'Point 5'],
    ['one point', POINTS.slice(0, 1), 'map-too-few-points', 'rated point'],
    ['the same point ten times', new Array<MapPoint>(10).fill(POINTS[0]!), 'map-too-few-points', 'one point'],
    ['none', [], 'map-without-points', 'no points'],
  ])('%s', (_, points, code, words) => {
    const fitted = fitMap(mapOf(points));
    expect(fitted.ok).toBe(false);
    expect(fitted.remarks[0]).toMatchObject({ code, level: 'refusal' });
    expect(fitted.remarks[0]!.message).toContain(words);
    expect(fitted.remarks.length).toBeLessThanOrEqual(5);
  });

  test.each([
    ['2.2 times', 2.2046, 'pounds among kilograms'],
    ['13.07 times', 13.07, 'ft³/min among lb/min'],
    ['a 132nd', 1 / 132.28, 'kg/s among lb/min'],
  ])('a line whose flows are %s the others', (_, factor, unit) => {
    const points = POINTS.map((point) =>
      point.speedRpm === 50_000 ? { ...point, flow: factor * point.flow } : point,
    );
    const fitted = fitMap(mapOf(points));
    expect(fitted.ok).toBe(false);
    expect(fitted.remarks[0]).toMatchObject({ code: 'map-flow-units-mixed' });
    expect(fitted.remarks[0]!.message).toContain('50,000');
    expect(fitted.remarks[0]!.message).toContain(unit);
  });

  test('exchanged speeds: the lines cross', () => {
    const exchanged = POINTS.map((point) => {
      const other = { 40000: 50_000, 50000: 40_000 }[point.speedRpm];
      return { ...point, speedRpm: other ?? point.speedRpm };
    });
    const fitted = fitMap(mapOf(exchanged));
    expect(fitted.ok).toBe(false);
    expect(fitted.remarks[0]).toMatchObject({ code: 'map-lines-cross' });
    expect(fitted.remarks[0]!.message).toContain('40,000');
  });

  test.each([
    ['missing', { pressure: Number.NaN, temperature: Number.NaN }],
    ['zero', { pressure: 0, temperature: 0 }],
    ['in kPa and °C', { pressure: 101.325, temperature: 15 }],
  ])('a reference that is %s', (_, reference) => {
    expect(codesOf(mapOf(POINTS, { reference }))).toEqual(['map-reference-missing']);
  });

  test('two rated points', () => {
    expect(codesOf(mapOf(POINTS.slice(0, 2), { form: 'rated' }))).toEqual(['map-rated-needs-one-point']);
  });
});

describe('survived, and said', () => {
  test('a point twice counts once', () => {
    const fitted = fitMap(mapOf([...POINTS, POINTS[3]!]));
    if (!fitted.ok) throw new Error('refused');
    expect(fitted.value.quality!.points).toBe(POINTS.length);
    expect(fitted.remarks).toMatchObject([
      { code: 'map-points-twice', message: expect.stringContaining('25') },
    ]);
  });

  test('one point in another unit of flow: named, and the others keep their lines', () => {
    const fitted = fitMap(mapOf(changed(8, { flow: 1.6 * POINTS[8]!.flow })));
    if (!fitted.ok) throw new Error(fitted.remarks[0]?.message);
    const far = fitted.remarks.find(({ code }) => code === 'map-point-far-off');
    expect(far?.message).toContain('Point 9');
    expect(fitted.value.quality!.lines[3]!.pressureRatioRms).toBeLessThan(0.02);
  });

  test('one line, two lines', () => {
    expect(codesOf(mapOf(LINES[2]!))).toEqual(['map-one-line']);
    expect(codesOf(mapOf([...LINES[1]!, ...LINES[2]!]))).toEqual([]);
  });

  test('no efficiencies: guessed, with a wider band', () => {
    const without = fitMap(mapOf(POINTS.map((point) => ({ ...point, efficiency: null }))));
    const withThem = fitMap(mapOf(POINTS));
    if (!without.ok || !withThem.ok) throw new Error('refused');
    expect(without.remarks.map(({ code }) => code)).toEqual(['map-efficiency-guessed']);
    expect(without.value.spread.efficiency).toBeGreaterThan(3 * withThem.value.spread.efficiency);
  });

  test('no diameter: one is taken, and it is said', () => {
    const geometry = { wheelExitDiameter: null, wheelInletDiameter: null, blades: null, backsweep: null };
    const fitted = fitMap(mapOf(POINTS, { geometry }));
    if (!fitted.ok) throw new Error('refused');
    expect(fitted.value.isDiameterAssumed).toBe(true);
    expect(fitted.remarks.map(({ code }) => code)).toEqual(['map-diameter-assumed']);
  });

  test('a wheel of a tenth and of ten times the size: its tip could not do that, and it is said', () => {
    for (const factor of [0.1, 10]) {
      const geometry = { wheelInletDiameter: null, blades: null, backsweep: null };
      const map = mapOf(POINTS, { geometry: { ...geometry, wheelExitDiameter: 0.12 * factor } });
      expect(codesOf(map)).toEqual(['map-diameter-odd']);
    }
  });

  test('lines whose left end is not the top, and of unequal length', () => {
    const short = LINES.flatMap((line, place) => line.slice(place % 2 === 0 ? 2 : 0, place === 1 ? 4 : 6));
    const fitted = fitMap(mapOf(short));
    if (!fitted.ok) throw new Error(fitted.remarks[0]?.message);
    expect(fitted.value.quality!.pressureRatioRms).toBeLessThan(0.01);
  });
});
