import { expect, test } from 'vitest';
import { drawMapCursor } from './map-cursor.ts';
import type { DrawSize, MapDescription, MapGeometry } from './model.ts';

const SIZE: DrawSize = { width: 400, height: 300, text: 13, theme: 'light', ground: false };
const GEOMETRY: MapGeometry = { left: 50, right: 350, top: 20, bottom: 220, xRange: [0, 30], yRange: [1, 3] };

const mapOf = (x: (number | null)[], y: (number | null)[]): MapDescription => ({
  xTitle: 'Air flow',
  xUnit: 'lb/min',
  yTitle: 'Pressure ratio',
  yNote: '',
  xRange: [0, 30],
  yRange: [1, 3],
  speedLines: [],
  efficiency: [],
  edges: [],
  points: null,
  operating: [
    { key: 'B', name: 'B', style: { combination: 1 }, engineSpeed: [4000, 5000, 6000], x, y, named: [] },
  ],
  decimalMark: '.',
  alternative: '',
});

/** Middle of the upright hair: where the mark sits. */
function middle(map: MapDescription, engineSpeed: number): [number, number] | null {
  const [level, upright] = drawMapCursor(map, GEOMETRY, engineSpeed, SIZE);
  return level === undefined ? null : [Number(upright!.attributes.x1), Number(level.attributes.y1)];
}

test('the mark sits where the combination runs at this engine speed', () => {
  const map = mapOf([10, 20, 30], [1, 2, 3]);
  // A third and a half of the way along 300 px and 200 px, by hand.
  expect(middle(map, 4000)).toEqual([150, 220]);
  expect(middle(map, 5000)).toEqual([250, 120]);
  expect(middle(map, 4500)).toEqual([200, 170]);
});

test('no mark where nothing is known, and none outside the frame', () => {
  expect(drawMapCursor(mapOf([10, null, 30], [1, null, 3]), GEOMETRY, 5000, SIZE)).toEqual([]);
  expect(drawMapCursor(mapOf([10, 40, 30], [1, 2, 3]), GEOMETRY, 5000, SIZE)).toEqual([]);
  expect(drawMapCursor(mapOf([10, 20, 30], [1, 2, 3]), GEOMETRY, 7000, SIZE)).toEqual([]);
});

test('a link leads from the first combination to the other, with a head at the other', () => {
  const map = mapOf([10, 20, 30], [1, 2, 3]);
  const [only] = map.operating;
  const right = { ...only!, key: 'C', x: [20, 28, 30], y: [1, 2, 3] };
  const [link, head] = drawMapCursor({ ...map, operating: [only!, right] }, GEOMETRY, 5000, SIZE);
  // From 250 px to 330 px at 120 px, short of the marks at either end.
  const { x1, x2, y1, y2 } = link!.attributes;
  expect([y1, y2]).toEqual([120, 120]);
  expect(Number(x1)).toBeGreaterThan(250);
  expect(Number(x2)).toBeLessThan(330);
  expect(Number(x2) - Number(x1)).toBeGreaterThan(60);
  expect(String(head!.attributes.d)).toContain(`L${x2},120L`);
  // Where both are in one place there is nothing to lead to.
  const same = drawMapCursor({ ...map, operating: [only!, { ...only!, key: 'C' }] }, GEOMETRY, 5000, SIZE);
  expect(same.filter(({ attributes }) => attributes.fill === 'none')).toEqual([]);
});
