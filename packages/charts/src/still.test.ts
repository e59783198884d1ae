import { describe, expect, test } from 'vitest';
import { inventedChart } from './invented-chart.test-support.ts';
import type { ChartDescription, StillDescription } from './model.ts';
import { drawStill } from './still.ts';
import { overlappingTexts, textBoxes, textsOutside } from './text-boxes.test-support.ts';

const only = (chart: ChartDescription, ids: string[]): ChartDescription => ({
  ...chart,
  panels: chart.panels.filter(({ id }) => ids.includes(id)),
});
const SHORT: StillDescription = {
  headline: 'Longer cam, same pulley: +15 hp on average',
  subline: '±4 hp (95 %) · 3 pulls against 2, same day · SAE J1349',
  chart: only(inventedChart(), ['power', 'boost']),
  footer: ['3.8 L straight six, gasoline · intake air 84 °F, factor 1.021 · λ 0.79', 'Invented data'],
  warning: null,
  signature: null,
};
const LONG: StillDescription = {
  headline:
    'The longer cam with the single plane intake adds 28 hp on average from 4,000 to 6,500 rpm, takes 1.1 psi off the boost, and nobody would ever set a headline as long as this one is in two lines',
  subline: Array(6).fill('3 pulls against 2 on 14 and 15 March 2026, SAE J1349').join(' · '),
  chart: inventedChart({ combinations: 4, pullsEach: 2 }),
  footer: Array(9).fill(
    '3.8 L straight six, gasoline, centrifugal supercharger, intake air 84 °F, factor 1.021',
  ),
  warning: 'Not for publication',
  signature: {
    name: 'A workshop with a name that nobody would write on a door, for it is far too long',
    mark: { address: 'data:image/png;base64,', width: 3, height: 2 },
  },
};

const SIZES = [
  { width: 1920, height: 1080, theme: 'dark', ground: true },
  { width: 3840, height: 2160, theme: 'light', ground: true },
  { width: 1920, height: 1080, theme: 'light', ground: false },
] as const;

describe.each(SIZES)('a still of $width × $height, $theme, ground $ground', (size) => {
  test.each([
    ['short', SHORT],
    ['long', LONG],
    ['one panel', { ...SHORT, chart: only(inventedChart(), ['power']) }],
    ['private', { ...SHORT, warning: 'Not for publication' }],
    ['signed', { ...SHORT, signature: { name: 'Invented workshop', mark: null } }],
    ['no curves', { ...SHORT, chart: { ...SHORT.chart, xRange: [9000, 9500] as [number, number] } }],
  ])('%s: everything is in the frame, apart, and large enough for a telephone', (_, still) => {
    const scene = drawStill(still, size);
    const boxes = textBoxes(scene);
    expect(textsOutside(boxes, scene)).toEqual([]);
    expect(overlappingTexts(boxes)).toEqual([]);
    for (const { text, sizePx } of boxes) expect(sizePx, text).toBeGreaterThanOrEqual(0.03 * size.height);
  });

  test('the headline has at most two lines, none smaller than 4.5 % of the height', () => {
    for (const still of [SHORT, LONG]) {
      const headline = drawStill(still, size).nodes.filter(({ attributes }) =>
        String(attributes['font-family']).includes('Serif'),
      );
      expect(headline.length).toBeLessThanOrEqual(2);
      for (const { attributes } of headline)
        expect(Number(attributes['font-size'])).toBeGreaterThanOrEqual(0.045 * size.height - 0.01);
    }
  });
});

test('a still without a ground has none, with one it covers the frame', () => {
  const [first] = drawStill(SHORT, SIZES[0]).nodes;
  expect(first).toMatchObject({ tag: 'rect', attributes: { width: 1920, height: 1080 } });
  expect(drawStill(SHORT, SIZES[2]).nodes.filter(({ tag }) => tag === 'rect')).toEqual([]);
});

test('both sizes are one picture', () => {
  const small = textBoxes(drawStill(SHORT, SIZES[0]));
  const large = textBoxes(drawStill(SHORT, { ...SIZES[0], width: 3840, height: 2160 }));
  expect(large.map(({ text }) => text)).toEqual(small.map(({ text }) => text));
  large.forEach(({ left, top }, index) => {
    expect(left / 2).toBeCloseTo(small[index]?.left ?? 0, 0);
    expect(top / 2).toBeCloseTo(small[index]?.top ?? 0, 0);
  });
});

test('a mark stands at the right end of the footer, in its own proportions, and no word runs into it', () => {
  const mark = { address: 'data:image/png;base64,', width: 300, height: 100 };
  const scene = drawStill({ ...LONG, signature: { name: 'Invented workshop', mark } }, SIZES[0]);
  const image = scene.nodes.find(({ tag }) => tag === 'image')!.attributes;
  const [x, width, height] = [Number(image.x), Number(image.width), Number(image.height)];
  expect(width / height).toBeCloseTo(3, 2);
  expect(x + width).toBeCloseTo(1920 - 0.05 * 1080, 0);
  const beside = textBoxes(scene).filter(({ top }) => top > Number(image.y));
  expect(beside.length).toBeGreaterThan(1);
  for (const { right } of beside) expect(right).toBeLessThanOrEqual(x);
});

test('what is not for everyone says so to eye and ear', () => {
  const scene = drawStill({ ...SHORT, warning: 'Not for publication' }, SIZES[0]);
  expect(textBoxes(scene).map(({ text }) => text)).toContain('Not for publication');
  expect(scene.alternative).toMatch(/Not for publication\.$/);
});
