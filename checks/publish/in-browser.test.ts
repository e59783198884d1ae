import { type DrawSize, type Face, FONT_FILES, STILL_SIZES, textWidth } from '@pullbook/charts';
import { stillPng, stillSvg } from '@pullbook/publish';
import { type NamedStill, stillSet } from '@pullbook/views/publish';
import fc from 'fast-check';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launch } from '../../apps/web/browser/launch.ts';
import { trialsWith } from '../../packages/views/src/publish/odd-trials.test-support.ts';
import { fontRules, onOneAnother, outside, type TextPlace } from './text-places.ts';

/** Pictures as Chromium sets and decodes them: the reader that most of them will have. */
let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await launch();
  page = await browser.newPage();
  await page.setContent(`<style>${fontRules()}</style><div id="stage"></div><canvas id="canvas"></canvas>`);
  await page.evaluate(() => Promise.all([...document.fonts].map((face) => face.load())));
});
afterAll(() => browser?.close());

const sets = fc
  .sample(trialsWith(['clear', 'likely', 'within-noise']), { seed: 31, numRuns: 6 })
  .map((answer) => stillSet(answer, { units: 'us', decimalMark: '.' }, null));
const SIZES = ['1080p', 'square', 'tall'] as const;
const pictures = sets.flatMap((set, trial) =>
  set.map(({ name, key, still }, place) => {
    const size = name === 'thumbnail' ? 'thumbnail' : SIZES[(trial + place) % SIZES.length]!;
    return { what: `trial ${trial}: ${name} ${key}, ${size}`, still, size: STILL_SIZES[size] };
  }),
);

interface BrowserText extends TextPlace {
  family: string;
  weight: number;
  /** As the browser sets it, px. */
  length: number;
}

/** Every text of a picture with its ink, by the browser's own layout. */
const textsIn = (svg: string): Promise<BrowserText[]> =>
  page.evaluate((file) => {
    const stage = document.getElementById('stage')!;
    stage.innerHTML = file;
    const pen = (document.getElementById('canvas') as HTMLCanvasElement).getContext('2d')!;
    return [...stage.querySelectorAll('text')].map((element) => {
      const { fontFamily, fontWeight, fontSize } = getComputedStyle(element);
      pen.font = `${fontWeight} ${fontSize} ${fontFamily}`;
      pen.fontKerning = 'normal';
      pen.textAlign = 'left';
      const text = element.textContent;
      const ink = pen.measureText(text);
      const box = element.getBBox();
      const y = Number(element.getAttribute('y'));
      return {
        text,
        family: fontFamily.split(',')[0]!.replaceAll(/["']/g, ''),
        weight: Number(fontWeight),
        length: element.getComputedTextLength(),
        sizePx: Number.parseFloat(fontSize),
        left: box.x - ink.actualBoundingBoxLeft,
        right: box.x + ink.actualBoundingBoxRight,
        top: y - ink.actualBoundingBoxAscent,
        bottom: y + ink.actualBoundingBoxDescent,
      };
    });
  }, svg);

const faceOf = ({ family, weight }: BrowserText): Face =>
  (Object.keys(FONT_FILES) as Face[]).find(
    (face) => FONT_FILES[face].family === family && FONT_FILES[face].weight === weight,
  )!;

test('as a browser sets them, no text lies on another or leaves its picture; shipped signs are as wide as was reckoned', async () => {
  const seen = { shipped: 0, other: 0 };
  for (const { what, still, size } of pictures) {
    const texts = await textsIn(stillSvg(still, { ...size, theme: 'dark', ground: true }));
    expect(texts.length, what).toBeGreaterThan(2);
    expect(onOneAnother(texts), what).toEqual([]);
    expect(outside(texts, size.width, size.height), what).toEqual([]);
    for (const one of texts) {
      const reckoned = textWidth(one.text, one.sizePx, faceOf(one));
      const isShipped = /^[\u0020-\u024f\u0370-\u03ff\u2010-\u2026\u202f\u2212]*$/u.test(one.text);
      if (isShipped) {
        // 1 % as in `text-width.test.ts`, and what the browser rounds a line to.
        expect(Math.abs(one.length - reckoned), `${what}: ${one.text}`).toBeLessThan(0.01 * reckoned + 0.5);
        seen.shipped += 1;
      } else seen.other += 1;
    }
  }
  expect(seen.shipped).toBeGreaterThan(1000);
  expect(seen.other).toBeGreaterThan(20);
}, 120_000);

/** A PNG as the browser decodes it: its size, how much of it is clear, wholly covered, and its corners. */
const decoded = (png: Uint8Array) =>
  page.evaluate(async (base64) => {
    const image = new Image();
    image.src = `data:image/png;base64,${base64}`;
    await image.decode();
    const canvas = document.getElementById('canvas') as HTMLCanvasElement;
    const [width, height] = [image.naturalWidth, image.naturalHeight];
    Object.assign(canvas, { width, height });
    const pen = canvas.getContext('2d', { willReadFrequently: true })!;
    pen.drawImage(image, 0, 0);
    const { data } = pen.getImageData(0, 0, width, height);
    let [clear, covered] = [0, 0];
    for (let at = 3; at < data.length; at += 4) {
      if (data[at] === 0) clear += 1;
      if (data[at] === 255) covered += 1;
    }
    const pixels = width * height;
    return { width, height, clear: clear / pixels, covered: covered / pixels, corner: [...data.slice(0, 4)] };
  }, Buffer.from(png).toString('base64'));

test.each(Object.entries(STILL_SIZES))(
  'a browser decodes %s with its size, its ground, or clear',
  async (name, size) => {
    const wanted: NamedStill['name'] = name === 'thumbnail' ? 'thumbnail' : 'power';
    const { still } = sets.flat().find((one) => one.name === wanted)!;
    const made = (more: Pick<DrawSize, 'theme' | 'ground'>) => decoded(stillPng(still, { ...size, ...more }));
    // The grounds of `THEMES`, as a person may look them up in a picture.
    expect(await made({ theme: 'light', ground: true })).toEqual({
      ...size,
      clear: 0,
      covered: 1,
      corner: [244, 246, 247, 255],
    });
    const clear = await made({ theme: 'dark', ground: false });
    expect(clear).toMatchObject({ ...size, corner: [0, 0, 0, 0] });
    expect(clear.clear).toBeGreaterThan(0.6);
    expect(clear.covered).toBeGreaterThan(0.02);
  },
  60_000,
);
