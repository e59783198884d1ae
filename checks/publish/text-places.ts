import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Font, openSync } from 'fontkit';
import { numberOf, type SvgElement } from './read-svg.ts';

/** Where a text is in a picture, px. */
export interface TextPlace {
  text: string;
  sizePx: number;
  left: number;
  right: number;
  top: number;
  bottom: number;
}

const FOLDER = join(import.meta.dirname, '..', '..', 'packages', 'charts', 'fonts');
const FILES: Record<string, string> = {
  'Inter 400': 'Inter-Regular.ttf',
  'Inter 600': 'Inter-SemiBold.ttf',
  'Source Serif 4 400': 'SourceSerif4-Regular.ttf',
  'Source Serif 4 600': 'SourceSerif4-SemiBold.ttf',
};
const fonts = new Map<string, Font>(
  Object.entries(FILES).map(([name, file]) => [name, openSync(join(FOLDER, file)) as Font]),
);

/** The shipped fonts for a page of a browser: rules with the bytes in them. */
export const fontRules = (): string =>
  Object.entries(FILES)
    .map(([name, file]) => {
      const [, family, weight] = /^(.*) (\d+)$/u.exec(name)!;
      const data = readFileSync(join(FOLDER, file)).toString('base64');
      return `@font-face{font-family:'${family}';font-weight:${weight};src:url(data:font/ttf;base64,${data})}`;
    })
    .join('');

/** Family and weight of a text, as its font is named here. */
const fontOf = ({ attributes }: SvgElement): Font =>
  fonts.get(`${attributes['font-family']!.split(',')[0]!.replaceAll("'", '')} ${attributes['font-weight']}`)!;

type Layout = { font: Font; run: ReturnType<Font['layout']> };
/** The same ticks and footers stand in a whole set. */
const layouts = new Map<string, Layout>();

function laidOut(element: SvgElement): Layout {
  const { text, attributes } = element;
  const name = `${attributes['font-family']} ${attributes['font-weight']} ${text}`;
  const known = layouts.get(name);
  if (known) return known;
  const font = fontOf(element);
  // Without a letter fontkit has no script, and kerns twice.
  const made = { font, run: font.layout(text, undefined, /\p{L}/u.test(text) ? undefined : 'latn') };
  layouts.set(name, made);
  return made;
}

/**
 * The ink of a text by fontkit's own layout of the shipped font, with all its kerning: from the first sign's left edge to the last one's
 * right, from the highest to the lowest. `null`: a space, or signs that the font has not.
 */
export function inkOf(element: SvgElement): TextPlace | null {
  const { font, run } = laidOut(element);
  const sizePx = numberOf(element, 'font-size');
  if (run.glyphs.some(({ id }) => id === 0)) return null;
  const scale = sizePx / font.unitsPerEm;
  const { minX, maxX, minY, maxY } = run.bbox;
  if (!(maxX > minX)) return null;
  const anchor = element.attributes['text-anchor'] ?? 'start';
  const width = run.advanceWidth * scale;
  const x = numberOf(element, 'x') - (anchor === 'middle' ? width / 2 : anchor === 'end' ? width : 0);
  const y = numberOf(element, 'y');
  return {
    text: element.text,
    sizePx,
    left: x + minX * scale,
    right: x + maxX * scale,
    top: y - maxY * scale,
    bottom: y - minY * scale,
  };
}

/** Pairs that lie on one another. */
export const onOneAnother = (places: TextPlace[]): string[] =>
  places.flatMap((one, index) =>
    places
      .slice(index + 1)
      .filter(
        (other) =>
          one.left < other.right &&
          other.left < one.right &&
          one.top < other.bottom &&
          other.top < one.bottom,
      )
      .map((other) => `"${one.text}" on "${other.text}"`),
  );

export const outside = (places: TextPlace[], width: number, height: number): string[] =>
  places
    .filter(({ left, right, top, bottom }) => left < 0 || top < 0 || right > width || bottom > height)
    .map(({ text }) => `"${text}" leaves the picture`);
