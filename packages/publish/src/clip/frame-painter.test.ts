import { type ClipDescription, clipSeconds, drawClipFrame, drawStill, sceneToSvg } from '@pullbook/charts';
import { Resvg } from '@resvg/resvg-js';
import { expect, test } from 'vitest';
import { inventedClip } from '../../../charts/src/invented-clip.test-support.ts';
import { fontsFor } from '../fonts-for.ts';
import { framePainter } from './frame-painter.ts';
import { straightAlpha } from './straight-alpha.ts';

const SIZE = { width: 640, height: 540, theme: 'dark', ground: true } as const;
const clip: ClipDescription = inventedClip;

/** The whole picture, rasterised at once. */
function rasterised(scene: ReturnType<typeof drawStill>): Uint8Array {
  return new Resvg(sceneToSvg(scene), { font: fontsFor([]) }).render().pixels;
}

/** Largest difference of any channel, and how many of 10,000 channels differ by more than eight. */
function apart(one: Uint8Array, other: Uint8Array): { most: number; often: number } {
  let most = 0;
  let often = 0;
  for (let index = 0; index < one.length; index += 1) {
    const difference = Math.abs(one[index]! - other[index]!);
    if (difference > most) most = difference;
    if (difference > 8) often += 1;
  }
  return { most, often: (10_000 * often) / one.length };
}

test.each([true, false])(
  'painted piece by piece, frames are what they are drawn at once (ground: %s)',
  async (ground) => {
    const size = { ...SIZE, ground };
    const painter = framePainter(clip, size);
    let compared = 0;
    for (let at = 0; at < clipSeconds(clip); at += 1 / 9) {
      await painter.paint(at, 1 / 9);
      const whole = rasterised(drawClipFrame(clip, at, size));
      if (!ground) straightAlpha(whole);
      // A rasteriser rounds a cut curve a little differently; a piece forgotten or misplaced would be hundreds of channels.
      expect(apart(painter.pixels, whole).often, `${at.toFixed(2)} s`).toBeLessThan(0.5);
      compared += 1;
    }
    expect(compared).toBe(36);
  },
);

test('a picture that stands is the still to the pixel, and is not drawn again', async () => {
  const painter = framePainter(clip, SIZE);
  for (let at = 0; at <= 0.95; at += 1 / 30) await painter.paint(at, 1 / 30);
  expect(apart(painter.pixels, rasterised(drawStill(clip.steps[0]!.still, SIZE)))).toEqual({
    most: 0,
    often: 0,
  });
  expect(await painter.paint(0.96, 1 / 30)).toBe(false);
  expect(await painter.paint(1.05, 1 / 30)).toBe(true);
});

test('colours are taken out of the alpha they were multiplied by', () => {
  const pixels = Uint8Array.of(64, 0, 32, 128, 9, 9, 9, 255, 0, 0, 0, 0);
  straightAlpha(pixels);
  expect([...pixels]).toEqual([128, 0, 64, 128, 9, 9, 9, 255, 0, 0, 0, 0]);
});
