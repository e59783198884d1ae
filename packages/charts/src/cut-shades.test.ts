import { expect, test } from 'vitest';
import { inventedChart } from './invented-chart.test-support.ts';
import { placeAcross } from './marked-range.ts';
import type { DrawSize } from './model.ts';
import { drawStack } from './stack.ts';
import { overlappingTexts, textBoxes } from './text-boxes.test-support.ts';

const SIZE: DrawSize = { width: 860, height: 740, text: 13, theme: 'light', ground: false };
const chart = {
  ...inventedChart(),
  xCuts: [
    { range: [3000, 3400] as [number, number], label: 'cut 1' },
    { range: [3400, 3410] as [number, number], label: 'cut 2' },
    { range: [3410, 3415] as [number, number], label: 'cut 3' },
    { range: [9000, 9100] as [number, number], label: 'cut 4' },
  ],
};

test('what is cut is shaded in every panel where it lies, and numbered once', () => {
  const { scene, geometry } = drawStack(chart, SIZE);
  const shades = scene.nodes.filter(({ tag }) => tag === 'rect');
  expect(shades).toHaveLength(3 * geometry.panels.length);
  expect(Number(shades[0]!.attributes.x)).toBeCloseTo(placeAcross(geometry, 3000), 1);
  expect(Number(shades[0]!.attributes.width)).toBeCloseTo(
    placeAcross(geometry, 3400) - placeAcross(geometry, 3000),
    1,
  );
  const boxes = textBoxes(scene);
  const numbers = boxes.map(({ text }) => text).filter((text) => /^cut/.test(text));
  expect(numbers).toEqual(['cut 1', 'cut 2', 'cut 3']);
  expect(overlappingTexts(boxes)).toEqual([]);
});
