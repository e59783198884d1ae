import { drawStill, FONT_FILES, type StillDescription, sceneToSvg } from '@pullbook/charts';
import { Resvg } from '@resvg/resvg-js';
import { fontPaths } from './font-folder.ts';
import type { StillSize } from './still-size.ts';

/**
 * A still as an SVG file: sharp at every size, its text stays text. Set in Inter and Source Serif 4 where the reader
 * has them, else in the next best; for a picture that is the same everywhere take the PNG.
 */
export function stillSvg(still: StillDescription, size: StillSize): string {
  return sceneToSvg(drawStill(still, size), { title: still.headline });
}

/**
 * A still as the bytes of a PNG file of exactly the size asked for, drawn with the shipped fonts only, so that it is the
 * same on every machine. Without a ground it is transparent where nothing is drawn.
 *
 * @example writeFileSync(name, stillPng(still, { ...STILL_SIZES['1080p'], theme: 'dark', ground: true }))
 */
export function stillPng(still: StillDescription, size: StillSize): Uint8Array {
  const picture = new Resvg(stillSvg(still, size), {
    font: { loadSystemFonts: false, fontFiles: fontPaths(), defaultFontFamily: FONT_FILES.sans.family },
  });
  return picture.render().asPng();
}
