import type { StackGeometry } from '@pullbook/charts';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { nodeAt } from './node-at.ts';

const geometry: StackGeometry = {
  left: 40,
  right: 840,
  top: 0,
  bottom: 500,
  xRange: [2500, 6500],
  windowMiddle: null,
  panels: [],
};
const nodes = Array.from({ length: 81 }, (_, index) => 2500 + 50 * index);

test('the ends of the plot are the first and the last node, and beyond them nothing new', () => {
  expect(nodeAt(40, geometry, nodes)).toBe(0);
  expect(nodeAt(840, geometry, nodes)).toBe(80);
  expect(nodeAt(-100, geometry, nodes)).toBe(0);
  expect(nodeAt(4000, geometry, nodes)).toBe(80);
});

test('no other node is nearer than the one found', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 900, noNaN: true }),
      fc.uniqueArray(fc.integer({ min: 2500, max: 6500 }), { minLength: 1, maxLength: 60 }),
      (pixel, someNodes) => {
        const ascending = someNodes.toSorted((a, b) => a - b);
        const found = ascending[nodeAt(pixel, geometry, ascending)]!;
        const place = (rpm: number) => 40 + ((rpm - 2500) / 4000) * 800;
        for (const other of ascending) {
          expect(Math.abs(place(found) - pixel)).toBeLessThanOrEqual(Math.abs(place(other) - pixel) + 1e-9);
        }
      },
    ),
    { seed: 20260314 },
  );
});
