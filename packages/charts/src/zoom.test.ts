import { describe, expect, test } from 'vitest';
import { inventedChart } from './invented-chart.test-support.ts';
import { drawMarkedRange, placeAcross } from './marked-range.ts';
import type { ChartDescription, DrawSize } from './model.ts';
import { drawStack } from './stack.ts';
import { overlappingTexts, textBoxes, textsOutside } from './text-boxes.test-support.ts';
import { rangeText, shownOf, zoomed } from './zoom.ts';

const SIZE: DrawSize = { width: 860, height: 740, text: 13, theme: 'light', ground: true };
const NARROW: DrawSize = { ...SIZE, width: 390, height: 900 };
const chart = inventedChart();
const said = (shown: ChartDescription) => textBoxes(drawStack(shown, SIZE).scene).map(({ text }) => text);

describe('zoomed', () => {
  test('shows the part asked for, and says so', () => {
    const shown = zoomed(chart, [4000, 5000]);
    expect(shown.xRange).toEqual([4000, 5000]);
    expect(shown.alternative).toMatch(/^Shown: 4,000 to 5,000 rpm of 3,000 to 6,500 rpm\. Power, torque/);
    expect(shownOf(shown, chart)).toBe('4,000 to 5,000 rpm of 3,000 to 6,500 rpm');
  });

  test('heights follow what is shown', () => {
    const heights = (shown: ChartDescription) => drawStack(shown, SIZE).geometry.panels[0]!.yRange;
    const power = chart.panels[0]!.lines;
    const seen = power.flatMap(({ x, y }) =>
      y.filter((height, index) => height !== null && x[index]! >= 3200 && x[index]! <= 3600),
    ) as number[];
    const [low, high] = heights(zoomed(chart, [3200, 3600]));
    expect(low).toBeLessThanOrEqual(Math.min(...seen));
    expect(high).toBeGreaterThanOrEqual(Math.max(...seen));
    const [wholeLow, wholeHigh] = heights(chart);
    expect(high - low).toBeLessThan((wholeHigh - wholeLow) / 3);
  });

  test('a peak outside of what is shown has no mark, one inside keeps it', () => {
    const peak = chart.panels[1]!.marks[0]!;
    expect(said(chart)).toContain(peak.text);
    expect(said(zoomed(chart, [peak.x - 300, peak.x + 300]))).toContain(peak.text);
    expect(said(zoomed(chart, [3000, peak.x - 300]))).not.toContain(peak.text);
  });

  test('stays within the chart, and is the chart itself where it shows all of it or none', () => {
    expect(zoomed(chart, [1000, 4000]).xRange).toEqual([3000, 4000]);
    expect(zoomed(chart, [1000, 9000])).toBe(chart);
    expect(zoomed(chart, [7000, 9000])).toBe(chart);
    expect(zoomed(chart, [5000, 5000])).toBe(chart);
  });

  test.each([
    [SIZE, [4500, 4700]],
    [NARROW, [4500, 4700]],
    [SIZE, [3000, 3050]],
    [NARROW, [6200, 6500]],
  ] as const)('no text leaves the drawing or lies on another', (size, range) => {
    const { scene } = drawStack(zoomed(chart, range), size);
    const boxes = textBoxes(scene);
    expect(textsOutside(boxes, scene)).toEqual([]);
    expect(overlappingTexts(boxes)).toEqual([]);
  });

  test('a window that is not shown is not drawn; one that goes on has no end there', () => {
    const text = chart.xWindow!.text;
    expect(said(zoomed(chart, [3000, 3900]))).not.toContain(text);
    expect(said(zoomed(chart, [4200, 6000]))).toContain(text);
    const upright = (shown: ChartDescription) => {
      const { scene, geometry } = drawStack(shown, SIZE);
      return scene.nodes.filter(
        ({ tag, attributes }) =>
          tag === 'line' && attributes.x1 === attributes.x2 && Number(attributes.y2) < geometry.top,
      ).length;
    };
    expect(upright(chart)).toBe(2);
    expect(upright(zoomed(chart, [3500, 6000]))).toBe(1);
    expect(upright(zoomed(chart, [4200, 6000]))).toBe(0);
  });
});

test('a range in words has the decimals of its axis', () => {
  expect(rangeText({ xUnit: 's', xDecimals: 2, decimalMark: ',' }, [1, 2.345])).toBe('1,00 to 2,35 s');
});

test('a marked range lies where the axis has it, either way round, and only where it is shown', () => {
  const { geometry } = drawStack(chart, SIZE);
  const [rect] = drawMarkedRange(geometry, [5000, 4000], SIZE);
  expect(Number(rect!.attributes.x)).toBeCloseTo(placeAcross(geometry, 4000), 1);
  const end = Number(rect!.attributes.x) + Number(rect!.attributes.width);
  expect(end).toBeCloseTo(placeAcross(geometry, 5000), 1);
  expect(Number(drawMarkedRange(geometry, [0, 4000], SIZE)[0]!.attributes.x)).toBeCloseTo(geometry.left, 1);
});
