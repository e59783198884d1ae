import { describe, expect, test } from 'vitest';
import { inventedChart } from './invented-chart.test-support.ts';
import type { ChartDescription, DrawSize, Scene, SceneNode } from './model.ts';
import { drawStack } from './stack.ts';
import { overlappingTexts, textBoxes, textsOutside } from './text-boxes.test-support.ts';

const WIDE: DrawSize = { width: 860, height: 740, text: 13, theme: 'light', ground: true };
const NARROW: DrawSize = { width: 390, height: 900, text: 13, theme: 'dark', ground: true };

const texts = (scene: Scene): string[] => textBoxes(scene).map(({ text }) => text);
const all = (nodes: SceneNode[]): SceneNode[] => nodes.flatMap((node) => [node, ...all(node.children)]);

/** Every number pair of every curve. */
function curvePoints(scene: Scene): [number, number][] {
  return all(scene.nodes)
    .filter(({ tag, attributes }) => tag === 'path' && attributes.fill === 'none')
    .flatMap(({ attributes }) => [...String(attributes.d).matchAll(/[ML](-?[\d.]+),(-?[\d.]+)/gu)])
    .map((match) => [Number(match[1]), Number(match[2])]);
}

const SIZES: [string, DrawSize][] = [
  ['wide', WIDE],
  ['large text', { ...WIDE, width: 1200, height: 1000, text: 20 }],
  ['narrow', NARROW],
  ['telephone', { ...NARROW, width: 320, height: 800 }],
];
const CHARTS: [string, ChartDescription][] = [
  ['one combination', inventedChart({ combinations: 1, supercharged: false })],
  ['two', inventedChart()],
  ['four', inventedChart({ combinations: 4, pullsEach: 2 })],
  [
    'eight with long names',
    inventedChart({
      combinations: 8,
      pullsEach: 1,
      names: Array(8).fill('a name that is much too long to stand beside its line'),
    }),
  ],
  [
    'window too small for its text',
    { ...inventedChart(), xWindow: { range: [4400, 4700], text: 'averages from 4,400 to 4,700 rpm' } },
  ],
];

describe.each(SIZES)('drawStack, %s', (_, size) => {
  test.each(CHARTS)('%s: no text leaves the drawing or lies on another', (_name, chart) => {
    const { scene } = drawStack(chart, size);
    const boxes = textBoxes(scene);
    expect(textsOutside(boxes, scene)).toEqual([]);
    expect(overlappingTexts(boxes)).toEqual([]);
  });

  test.each(CHARTS)('%s: curves stay in their panels', (_name, chart) => {
    const { scene, geometry } = drawStack(chart, size);
    for (const [x, y] of curvePoints(scene).filter(([x]) => x <= geometry.right + 0.1)) {
      expect(x).toBeGreaterThanOrEqual(geometry.left - 0.1);
      expect(
        geometry.panels.some(({ top, bottom }) => y >= top - 0.1 && y <= bottom + 0.1),
        `${x},${y}`,
      ).toBe(true);
    }
  });
});

describe('drawStack', () => {
  test('says each name once, and the key and value at every line', () => {
    const said = texts(drawStack(inventedChart(), WIDE).scene);
    expect(said.filter((text) => text === 'base cam')).toHaveLength(1);
    expect(said.filter((text) => text === 'A')).toHaveLength(3);
    expect(said).toContain('10.4 psi');
  });

  test('says every name on a narrow drawing too', () => {
    const said = texts(drawStack(inventedChart(), NARROW).scene);
    expect(said).toEqual(expect.arrayContaining(['base cam', '12° longer cam', 'Engine speed', 'rpm']));
  });

  test('names that find no room beside the lines go on top', () => {
    const chart = inventedChart({
      combinations: 8,
      pullsEach: 0,
      names: ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'].map((one) => `${one} cam`),
    });
    const said = texts(drawStack(chart, { ...WIDE, height: 420 }).scene);
    for (const name of ['a cam', 'h cam']) expect(said).toContain(name);
  });

  test('a label is not cut while there is room for it', () => {
    for (const width of [700, 860, 1000, 1233, 1920]) {
      const chart = inventedChart({
        names: ['base cam without supercharger', 'longer cam with supercharger'],
      });
      const said = texts(drawStack(chart, { ...WIDE, width, text: width / 60 }).scene);
      expect(said.filter((text) => text.includes('…'))).toEqual([]);
    }
  });

  test('a wide drawing gives the labels at most 32 % of its width', () => {
    const { geometry } = drawStack(inventedChart({ names: ['x'.repeat(200), 'y'.repeat(200)] }), WIDE);
    expect(WIDE.width - geometry.right).toBeLessThanOrEqual(0.32 * WIDE.width + 13);
  });

  test('writes each axis with its unit, and differences with their sign', () => {
    const said = texts(drawStack(inventedChart(), WIDE).scene);
    expect(said).toEqual(expect.arrayContaining(['Power', 'hp, SAE J1349', 'rpm', '3,000', '+10', '−10']));
  });

  test.each(SIZES)('%s: an axis that counts has whole ticks only, and its title', (_, size) => {
    const [power] = inventedChart().panels;
    const line = { ...power!.lines[0]!, x: [1, 4, 8], y: [5.3, 4.6, 2.7] };
    const panel = { ...power!, lines: [line], bands: [], marks: [] };
    const chart: ChartDescription = {
      ...inventedChart(),
      xTitle: 'Pulls of each',
      xUnit: '',
      xRange: [1, 8],
      xWindow: null,
      xCounts: true,
      panels: [panel],
    };
    const said = texts(drawStack(chart, size).scene);
    expect(said).toContain('Pulls of each');
    expect(said).toContain('4');
    expect(said.filter((text) => /^\d[.,]\d$/.test(text) && Number(text) > 5.5)).toEqual([]);
  });

  test('writes decimal commas where they are asked for', () => {
    const said = texts(drawStack({ ...inventedChart(), decimalMark: ',' }, WIDE).scene);
    expect(said).toContain('3\u202f000');
  });

  test('shows zero where it is asked for', () => {
    const chart = inventedChart();
    const [power] = chart.panels;
    const { geometry } = drawStack({ ...chart, panels: power ? [{ ...power, zeroLine: true }] : [] }, WIDE);
    expect(geometry.panels[0]?.yRange[0]).toBeLessThanOrEqual(0);
  });

  test('gives each panel its share of the height', () => {
    const { geometry } = drawStack(inventedChart(), WIDE);
    const heights = geometry.panels.map(({ top, bottom }) => bottom - top);
    expect((heights[0] ?? 0) / (heights[1] ?? 1)).toBeCloseTo(1.6, 6);
  });

  test('a chart without a value in the range says so', () => {
    const { scene } = drawStack({ ...inventedChart(), xRange: [9000, 9500] }, { ...NARROW, height: 300 });
    expect(texts(scene).join(' ')).toBe('Nothing to draw: no curve has values in this range.');
    expect(textsOutside(textBoxes(scene), scene)).toEqual([]);
  });

  test('a peak that is still climbing has a hollow mark and an arrow', () => {
    const chart = inventedChart({ combinations: 4 });
    const hollow = all(drawStack(chart, WIDE).scene.nodes).filter(
      ({ attributes }) => attributes.fill === '#ffffff' && attributes.stroke,
    );
    expect(hollow).toHaveLength(
      chart.panels.flatMap(({ marks }) => marks.filter(({ stillClimbing }) => stillClimbing)).length,
    );
  });

  test.each(SIZES)('%s: layers of a whole are named at their ends, one above the other', (_, size) => {
    const [power] = inventedChart().panels;
    const x = [3000, 6500];
    const layer = (name: string, low: number[], high: number[]) => ({
      style: 'ink' as const,
      x,
      low,
      high,
      layer: { name, value: '40 hp', fill: 'middle' as const },
    });
    const bands = [
      layer('Brake', [0, 0], [200, 500]),
      layer('Drive', [200, 500], [210, 540]),
      layer('Friction', [210, 540], [230, 600]),
    ];
    const line = { ...power!.lines[0]!, x, y: [230, 600], label: null };
    const panel = { ...power!, lines: [line], bands, marks: [], zeroLine: true };
    const chart = { ...inventedChart(), xWindow: null, panels: [panel] };
    const { scene } = drawStack(chart, { ...size, height: 400 });
    const boxes = textBoxes(scene);
    const tops = ['Friction', 'Drive', 'Brake'].map((name) => boxes.find(({ text }) => text === name)?.top);
    expect(tops).not.toContain(undefined);
    expect(tops).toEqual([...tops].sort((one, other) => one! - other!));
    expect(overlappingTexts(boxes)).toEqual([]);
    expect(textsOutside(boxes, scene)).toEqual([]);
  });

  test('a dotted line has a dot at its points, none nearer to another than can be told apart', () => {
    const [power] = inventedChart({ combinations: 1, pullsEach: 0, nodes: 701 }).panels;
    const lines = power!.lines.map((line) => ({ ...line, dotted: true as const }));
    const { scene, geometry } = drawStack(
      { ...inventedChart(), panels: [{ ...power!, lines, marks: [] }] },
      WIDE,
    );
    const dots = all(scene.nodes).filter(
      ({ tag, attributes }) => tag === 'circle' && attributes.fill === '#ffffff' && Number(attributes.r) < 3,
    );
    const places = dots.map(({ attributes }) => Number(attributes.cx));
    const gaps = places.slice(1).map((place, index) => place - places[index]!);
    expect(dots.length).toBeGreaterThan(20);
    expect(Math.min(...gaps)).toBeGreaterThanOrEqual(0.9 * WIDE.text);
    expect(Math.max(...places)).toBeLessThanOrEqual(geometry.right);
  });

  test('a line of more than 20,000 points is reduced', () => {
    const { scene, geometry } = drawStack(
      inventedChart({ nodes: 30_001, pullsEach: 0, combinations: 1, supercharged: false }),
      WIDE,
    );
    const perCurve = all(scene.nodes).map(({ attributes }) => String(attributes.d ?? '').split('L').length);
    expect(Math.max(...perCurve)).toBeLessThanOrEqual(4 * (geometry.right - geometry.left + 2));
    expect(Math.max(...perCurve)).toBeGreaterThan(geometry.right - geometry.left);
  });
});
