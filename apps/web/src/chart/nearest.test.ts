import fc from 'fast-check';
import { expect, test } from 'vitest';
import { nearest, placesWithin } from './nearest.ts';

test('no other place is nearer', () => {
  fc.assert(
    fc.property(
      fc.uniqueArray(fc.integer({ min: 0, max: 7000 }), { minLength: 1, maxLength: 60 }),
      fc.double({ min: -100, max: 8000, noNaN: true }),
      (some, value) => {
        const places = some.toSorted((one, other) => one - other);
        const found = Math.abs(places[nearest(places, value)]! - value);
        for (const place of places) expect(found).toBeLessThanOrEqual(Math.abs(place - value));
      },
    ),
    { seed: 3 },
  );
});

test('the places within a range, or one where there is none', () => {
  const places = [3000, 3050, 3100, 3150];
  expect(placesWithin(places, [3040, 3149])).toEqual([1, 2]);
  expect(placesWithin(places, [0, 9000])).toEqual([0, 3]);
  expect(placesWithin(places, [3050, 3100])).toEqual([1, 2]);
  expect(placesWithin(places, [3060, 3070])).toEqual([1, 1]);
});
