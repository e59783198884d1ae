import { describe, expect, test } from 'vitest';
import { overlaps } from './columns.ts';
import { drawCursor } from './cursor.ts';
import { inventedChart } from './invented-chart.test-support.ts';
import type { DrawSize } from './model.ts';
import { drawStack } from './stack.ts';
import { textBoxes } from './text-boxes.test-support.ts';

const chart = inventedChart();
const SIZES: DrawSize[] = [
  { width: 860, height: 740, text: 13, theme: 'light', ground: true },
  { width: 390, height: 900, text: 13, theme: 'dark', ground: false },
];

describe('drawCursor', () => {
  test.each(SIZES)('its label hides no text of the chart, anywhere ($width px)', (size) => {
    const { scene, geometry } = drawStack(chart, size);
    const others = textBoxes(scene);
    for (let x = 3000; x <= 6500; x += 50) {
      const pill = drawCursor(chart, geometry, x, size).find(({ tag }) => tag === 'rect')?.attributes;
      const left = Number(pill?.x);
      const top = Number(pill?.y);
      const box = {
        left,
        top,
        right: left + Number(pill?.width),
        bottom: top + Number(pill?.height),
      };
      expect(others.filter((other) => overlaps(box, other)).map(({ text }) => text)).toEqual([]);
      expect(box.left).toBeGreaterThanOrEqual(0);
      expect(box.right).toBeLessThanOrEqual(size.width);
    }
  });

  test('has one mark on each mean curve, at its height', () => {
    const [size] = SIZES as [DrawSize, DrawSize];
    const { geometry } = drawStack(chart, size);
    const nodes = drawCursor(chart, geometry, 5000, size);
    const circles = nodes.filter(({ tag }) => tag === 'circle');
    const means = chart.panels.flatMap(({ lines }) => lines.filter(({ weight }) => weight === 'mean'));
    expect(nodes.filter(({ tag }) => tag === 'circle' || tag === 'path')).toHaveLength(means.length);
    const power = chart.panels[0]?.lines.find(({ weight }) => weight === 'mean');
    const place = geometry.panels[0];
    const height = power?.y[40] ?? Number.NaN; // node 40 of 71 from 3,000 in steps of 50 is 5,000
    const [low, high] = place?.yRange ?? [0, 1];
    const expected =
      (place?.bottom ?? 0) - ((height - low) / (high - low)) * ((place?.bottom ?? 0) - (place?.top ?? 0));
    expect(Number(circles[0]?.attributes.cy)).toBeCloseTo(expected, 1);
  });

  test('is nothing outside the shown range', () => {
    const [size] = SIZES as [DrawSize, DrawSize];
    const { geometry } = drawStack(chart, size);
    expect(drawCursor(chart, geometry, 2999, size)).toEqual([]);
    expect(drawCursor(chart, geometry, Number.NaN, size)).toEqual([]);
  });
});
