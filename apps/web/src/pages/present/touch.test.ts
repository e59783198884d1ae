import { expect, test } from 'vitest';
import { meantBy } from './touch.ts';

const way = (from: [number, number], to: [number, number]) =>
  meantBy({ from: { x: from[0], y: from[1] }, to: { x: to[0], y: to[1] }, stageWidth: 390 });

test('a tap goes back on the left third, on on the right, and looks in the middle', () => {
  expect(way([40, 300], [42, 303])).toBe('back');
  expect(way([350, 300], [348, 300])).toBe('next');
  expect(way([195, 300], [195, 300])).toBe('point');
});

test('a swipe pushes the step out of the way; up, down or a little is none', () => {
  expect(way([300, 300], [180, 320])).toBe('next');
  expect(way([100, 300], [220, 280])).toBe('back');
  expect(way([200, 300], [220, 500])).toBeNull();
  expect(way([200, 300], [230, 300])).toBeNull();
});
