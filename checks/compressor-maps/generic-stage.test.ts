/**
 * The generic stage against measured stages (PROVENANCE.md): given sizes and one rated point, how far are
 * all the other points off?
 */
import { type CompressorMap, fitMap, type MapPoint } from '@pullbook/core/airpath';
import { describe, expect, test } from 'vitest';
import { MEASURED_MAPS } from './measured-maps.ts';
import { efficiencyOffsOf, offsOf } from './offs-of-points.ts';

/** The point of the best efficiency of the fastest line: about where makers rate theirs. */
function ratedPoint({ points }: CompressorMap): MapPoint {
  const fastest = Math.max(...points.map(({ speedRpm }) => speedRpm));
  return points
    .filter(({ speedRpm }) => speedRpm > 0.99 * fastest)
    .reduce((best, point) => (point.efficiency! > best.efficiency! ? point : best));
}

function scaled(map: CompressorMap) {
  const rated = fitMap({ ...map, form: 'rated', points: [ratedPoint(map)] });
  if (!rated.ok) throw new Error(rated.remarks[0]?.message);
  return {
    off: offsOf(rated.value, map.points),
    efficiencyOff: efficiencyOffsOf(rated.value, map.points),
    spread: rated.value.spread,
  };
}

describe('vaneless stages scaled by one point', () => {
  test.each(MEASURED_MAPS.filter(({ name }) => name !== 'HECC vaned'))(
    '$name within its stated spread',
    ({ map }) => {
      const { off, efficiencyOff, spread } = scaled(map);
      expect(off).toBeLessThan(spread.head);
      // CC3, of 50° backsweep, has 0.038: 1.3 standard deviations.
      expect(efficiencyOff).toBeLessThan(1.5 * spread.efficiency);
    },
  );
});

test('a vaned stage is missed, as the stage says', () => {
  const { map } = MEASURED_MAPS.find(({ name }) => name === 'HECC vaned')!;
  const { off, spread } = scaled(map);
  expect(off).toBeGreaterThan(1.5 * spread.head);
});
