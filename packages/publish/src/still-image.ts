import { drawStill, missingSigns, type StillDescription, type StillSize, sceneToSvg } from '@pullbook/charts';
import { Resvg } from '@resvg/resvg-js';
import { fontsFor } from './fonts-for.ts';
import { NUMBERS_NAME } from './numbers/names.ts';
import { withPngTexts } from './numbers/png-numbers.ts';
import { withSvgNumbers } from './numbers/svg-numbers.ts';

/** What goes into the file beside the picture. */
export interface WithNumbers {
  /** The figures shown, as JSON, to be read back from the file; missing: none. */
  numbers?: unknown;
}

/**
 * A still as an SVG file: sharp at every size, its text stays text. Set in Inter and Source Serif 4 where the reader
 * has them, else in the next best; for a picture that is the same everywhere take the PNG.
 */
export function stillSvg(still: StillDescription, size: StillSize, { numbers }: WithNumbers = {}): string {
  const svg = sceneToSvg(drawStill(still, size), { title: still.headline });
  return numbers === undefined ? svg : withSvgNumbers(svg, numbers);
}

/**
 * A still as the bytes of a PNG file of exactly the size asked for, drawn with the shipped fonts only, so that it is the
 * same on every machine; signs that those lack, of another script, are taken from the machine's. Without a ground it is
 * transparent where nothing is drawn.
 *
 * @example writeFileSync(name, stillPng(still, { ...STILL_SIZES['1080p'], theme: 'dark', ground: true }))
 */
export function stillPng(
  still: StillDescription,
  size: StillSize,
  { numbers }: WithNumbers = {},
): Uint8Array {
  const scene = drawStill(still, size);
  const picture = new Resvg(sceneToSvg(scene), {
    font: fontsFor(missingSigns(scene)),
  });
  const png = picture.render().asPng();
  return withPngTexts(png, {
    Title: still.headline,
    Description: scene.alternative,
    ...(numbers === undefined ? {} : { [NUMBERS_NAME]: JSON.stringify(numbers) }),
  });
}
