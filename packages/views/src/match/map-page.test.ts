import { type CompressorMap, fitMap } from '@pullbook/core/airpath';
import { describe, expect, test } from 'vitest';
import type { ViewOptions } from '../model.ts';
import { mapCard, mapPage } from './map-page.ts';
import { fittedCompressor, inventedCompressor } from './test-bundle.ts';

const US: ViewOptions = { units: 'us', decimalMark: '.' };
const SI: ViewOptions = { units: 'si', decimalMark: '.' };
const map = inventedCompressor();
const input = { map, fitted: fittedCompressor(map), remarks: [] };
const rated: CompressorMap = {
  ...map,
  form: 'rated',
  points: [{ flow: 0.5, pressureRatio: 1.9, speedRpm: 47_000, efficiency: 0.74 }],
  leftEnd: 'not known',
};

describe('the page of a map', () => {
  test('says form, reference and sizes in the units shown', () => {
    const { facts } = mapPage(input, SI);
    const of = (label: string) => facts.find((fact) => fact.label === label)?.value;
    expect(of('Form')).toBe('28 points on 4 lines, 30,000 to 52,000\u00a0rpm');
    expect(of('Flow and speed corrected to')).toBe('25.0\u00a0°C, 100.00\u00a0kPa');
    expect(of('Wheel exit diameter')).toBe('124.00\u00a0mm');
    expect(of('Left end of the lines')).toBe('surge was met there');
  });

  test('says how well it fits its points, whole and line by line', () => {
    const { quality } = mapPage(input, US);
    expect(quality).toHaveLength(1 + 4);
    for (const line of quality)
      expect(line).toMatch(
        /pressure ratio within \d\.\d\u00a0%, efficiency within \d\.\d points of its \d+ points/,
      );
    expect(quality[1]).toMatch(/^30,000\u00a0rpm: /);
  });

  test('draws its measured lines with its own points on them', () => {
    const { picture } = mapPage(input, SI);
    const named = picture?.speedLines.filter(({ label }) => label !== '');
    expect(named?.map(({ label }) => label)).toEqual(['30,000', '38,000', '46,000', '52,000\u00a0rpm']);
    expect(named?.every(({ isMeasured }) => isMeasured)).toBe(true);
    // Between the last point of each line and choke nothing was measured: from 0.9 of what the table's largest flow is made of.
    const beyond = picture!.speedLines.filter(({ isMeasured }) => !isMeasured);
    for (const [index, { x }] of beyond.entries())
      expect(x[0]).toBeCloseTo(map.points[7 * index + 6]!.flow, 6);
    expect(beyond).toHaveLength(4);
    expect(picture?.points?.x[0]).toBeCloseTo(map.points[0]!.flow, 12);
    expect(picture?.edges[0]).toMatchObject({ label: 'surge', isEstimated: false });
  });

  test('every efficiency line lies where the points have about that efficiency', () => {
    const { picture } = mapPage(input, SI);
    const near = (x: number, y: number) =>
      map.points.reduce((best, point) => {
        const far = ({ flow, pressureRatio }: typeof point) =>
          Math.hypot((flow - x) / 0.6, pressureRatio - y);
        return far(point) < far(best) ? point : best;
      });
    const distances = picture!.efficiency.flatMap(({ label, x, y }) =>
      x.flatMap((flow, index) => {
        const ratio = y[index]!;
        if (!Number.isFinite(ratio)) return [];
        const point = near(flow, ratio);
        return Math.hypot((point.flow - flow) / 0.6, point.pressureRatio - ratio) < 0.03
          ? [Math.abs(point.efficiency! - Number.parseFloat(label) / 100)]
          : [];
      }),
    );
    expect(distances.length).toBeGreaterThan(5);
    expect(Math.max(...distances)).toBeLessThan(0.03);
  });

  test('the table has each point in the units shown', () => {
    const { points } = mapPage(input, US);
    expect(points.rows).toHaveLength(28);
    // kg/s to lb/min, by hand: 60 / 0.45359237.
    expect(Number(points.rows[0]?.cells[0])).toBeCloseTo((map.points[0]!.flow * 60) / 0.45359237, 2);
  });

  test('a map from a rated point is said to be assumed, its lines drawn as not measured', () => {
    const fitted = fitMap(rated);
    expect(fitted.ok).toBe(true);
    const of = { map: rated, fitted: fitted.ok ? fitted.value : null, remarks: [] };
    const whole = mapPage(of, US);
    expect(whole.chips.map(({ text }) => text)).toContain('Assumed from a rated point');
    expect(whole.picture?.speedLines.some(({ isMeasured }) => isMeasured)).toBe(false);
    expect(whole.picture?.edges[0]).toMatchObject({ label: 'surge, estimated', isEstimated: true });
    expect(whole.quality[0]).toContain('generic stage');
    expect(mapCard(of, US).facts).toBe('one rated point at 47,000\u00a0rpm');
  });

  test('surge that nobody met is an estimate', () => {
    const stopped = { ...map, leftEnd: 'not known' as const };
    const { picture } = mapPage({ map: stopped, fitted: fittedCompressor(stopped), remarks: [] }, US);
    expect(picture?.edges[0]).toMatchObject({ label: 'surge, estimated', isEstimated: true });
  });

  test('a map that cannot be fitted has its points and no picture', () => {
    const whole = mapPage({ ...input, fitted: null }, US);
    expect(whole.picture).toBeNull();
    expect(whole.quality).toEqual([]);
    expect(whole.points.rows).toHaveLength(28);
  });
});
