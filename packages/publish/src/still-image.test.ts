import {
  drawStill,
  STILL_SIZES,
  type StillDescription,
  type StillSize,
  THEMES,
  textWidth,
} from '@pullbook/charts';
import { Resvg } from '@resvg/resvg-js';
import { describe, expect, test } from 'vitest';
import { inventedChart } from '../../charts/src/invented-chart.test-support.ts';
import { type TextBox, textBoxes } from '../../charts/src/text-boxes.test-support.ts';
import { fontPaths, fontPathsAbove } from './font-folder.ts';
import { type Pixels, readPng } from './png.test-support.ts';
import { stillPng, stillSvg } from './still-image.ts';

const still: StillDescription = {
  headline: 'Longer cam & same pulley: +15 hp on average',
  subline: '±4 hp (95 %) · 3 pulls against 2, same day · SAE J1349',
  body: { kind: 'stack', chart: inventedChart() },
  footer: [
    '3.8 L straight six, gasoline · intake air 84 °F, factor 1.021 · λ 0.79 · η Δ ρ ² ³ ≤ →',
    'Invented data',
  ],
  warning: null,
  signature: null,
  alternative: 'Power over engine speed.',
};
const DARK: StillSize = { ...STILL_SIZES['1080p'], theme: 'dark', ground: true };

const pixelAt = ({ width, rgba }: Pixels, x: number, y: number) => [
  ...rgba.subarray(4 * (y * width + x), 4 * (y * width + x) + 4),
];
const rgbOf = (hex: string) => [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));

/** Share of a text's box that is not plain ground. */
function inked(pixels: Pixels, box: TextBox, isGround: (pixel: number[]) => boolean): number {
  let ink = 0;
  let all = 0;
  for (let y = Math.round(box.top); y < box.bottom; y += 1) {
    for (let x = Math.round(box.left); x < box.right; x += 1) {
      all += 1;
      if (!isGround(pixelAt(pixels, x, y))) ink += 1;
    }
  }
  return ink / all;
}

describe('stillPng', () => {
  test.each(Object.entries(STILL_SIZES))('%s has exactly its size and its ground', (_, { width, height }) => {
    const pixels = readPng(stillPng(still, { width, height, theme: 'dark', ground: true }));
    expect([pixels.width, pixels.height]).toEqual([width, height]);
    for (const [x, y] of [
      [0, 0],
      [width - 1, 0],
      [0, height - 1],
      [width - 1, height - 1],
    ] as const) {
      expect(pixelAt(pixels, x, y)).toEqual([...rgbOf(THEMES.dark.paper), 255]);
    }
  });

  test('without a ground the corners are clear and the words are still there', () => {
    const size = { ...DARK, ground: false };
    const pixels = readPng(stillPng(still, size));
    for (const [x, y] of [
      [0, 0],
      [1919, 0],
      [0, 1079],
      [1919, 1079],
    ] as const)
      expect(pixelAt(pixels, x, y)[3]).toBe(0);
    for (const box of textBoxes(drawStill(still, size))) {
      expect(
        inked(pixels, box, ([, , , alpha]) => alpha === 0),
        box.text,
      ).toBeGreaterThan(0.05);
    }
  });

  test('every text is drawn, none is blank', () => {
    const pixels = readPng(stillPng(still, DARK));
    const ground = rgbOf(THEMES.dark.paper);
    for (const box of textBoxes(drawStill(still, DARK))) {
      const share = inked(pixels, box, (pixel) => ground.every((value, index) => pixel[index] === value));
      expect(share, box.text).toBeGreaterThan(0.05);
    }
  });

  test('is the same byte for byte when drawn again', () => {
    expect(Buffer.compare(stillPng(still, DARK), stillPng(still, DARK))).toBe(0);
  });
});

test('the rasteriser sets text as wide as it was laid out', () => {
  // Ink from the first stem to the last: narrower than the advances by the side bearings only.
  for (const text of [
    'HIH 538 hp, still climbing HIH',
    'H12° longer cam, Torque lb-ft, AVATARH',
    'Hλ η Δ ρ ± 0.79 → ² ³H',
  ]) {
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="3000" height="200"><text x="20" y="120" font-family="Inter" font-size="64">${text}</text></svg>`;
    const box = new Resvg(svg, { font: { loadSystemFonts: false, fontFiles: fontPaths() } }).getBBox();
    const bearings = 2 * 0.12 * 64;
    expect(box?.width ?? 0).toBeLessThanOrEqual(textWidth(text, 64, 'sans') + 1);
    expect(box?.width ?? 0).toBeGreaterThan(textWidth(text, 64, 'sans') - bearings - 1);
  }
});

test('the SVG keeps its text as text, escaped', () => {
  const svg = stillSvg(still, DARK);
  expect(svg).toContain('<title>Longer cam &amp; same pulley: +15 hp on average</title>');
  expect(svg).toMatch(/<text[^>]*>Longer cam &amp; same pulley/u);
});

test('a program away from the source tree finds the fonts above it, or says what is missing', () => {
  const built = new URL('../../../apps/cli/dist/rooms/chunk.mjs', import.meta.url).href;
  expect(fontPathsAbove(built)).toEqual(fontPaths());
  expect(() => fontPathsAbove('file:///nowhere/at/all.mjs')).toThrow('Inter-Regular.ttf');
});
