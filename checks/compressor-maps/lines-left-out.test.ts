/**
 * What a fitted map says of speeds between its lines: of three measured stages (PROVENANCE.md) each line is left out in turn and met by a fit of the others,
 * beside straight interpolation between its neighbours at equal relative flow. A point's error is its shortest distance to the predicted line,
 * in shares of its own flow and pressure ratio; its efficiency is held against the one at the nearest place.
 */
import { fitMap, leaveLineOut } from '@pullbook/core/airpath';
import { describe, expect, test } from 'vitest';
import { MEASURED_MAPS } from './measured-maps.ts';

describe.each(MEASURED_MAPS)('$name', ({ map }) => {
  const left = leaveLineOut(map);
  if (!left.ok) throw new Error(left.remarks[0]?.message);
  const { inner, outer, lines } = left.value;

  test('inner lines within 1.2 % and 0.015 of efficiency', () => {
    expect(inner.fit.pressureRatioRms).toBeLessThan(0.012);
    expect(inner.fit.efficiencyRms).toBeLessThan(0.015);
  });

  test('less than half of what straight interpolation is off', () => {
    expect(inner.fit.pressureRatioRms).toBeLessThan(0.5 * inner.straight.pressureRatioRms);
  });

  test('outer lines, gone to beyond the measured: within 2 % and 0.02', () => {
    expect(outer.fit.pressureRatioRms).toBeLessThan(0.02);
    expect(outer.fit.efficiencyRms).toBeLessThan(0.02);
  });

  test('every point is judged once, and only inner lines have a peer', () => {
    expect(inner.fit.points + outer.fit.points).toBe(map.points.length);
    expect(lines.map(({ straight }) => straight !== null)).toEqual(
      lines.map((_, place) => place > 0 && place < lines.length - 1),
    );
  });

  test('with all lines it meets its points within 0.5 % and 0.005, without a remark', () => {
    const fitted = fitMap(map);
    if (!fitted.ok) throw new Error(fitted.remarks[0]?.message);
    expect(fitted.value.quality!.pressureRatioRms).toBeLessThan(0.005);
    expect(fitted.value.quality!.efficiencyRms).toBeLessThan(0.005);
    expect(fitted.remarks).toEqual([]);
  });
});

test('it can fail: a line told with its speed 3 % wrong is met worse than the limit', () => {
  const { map } = MEASURED_MAPS.find(({ name }) => name === 'Eckardt O')!;
  const left = leaveLineOut({
    ...map,
    points: map.points.map((point) =>
      point.speedRpm === 12_000 ? { ...point, speedRpm: 1.03 * point.speedRpm } : point,
    ),
  });
  if (!left.ok) throw new Error(left.remarks[0]?.message);
  expect(left.value.inner.fit.pressureRatioRms).toBeGreaterThan(0.012);
});
