/**
 * Writes `src/font-widths.generated.json`: the advance of every sign that charts use and the kerning between the
 * common ones, read from the shipped TTFs; and `src/font-signs.generated.json`: which signs they have at all. Run after changing a font: `npx tsx packages/charts/tools/make-font-widths.ts`.
 */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Font, openSync } from 'fontkit';
import { FONT_FILES } from '../src/fonts.ts';

const span = (from: number, to: number): string[] =>
  Array.from({ length: to - from + 1 }, (_, index) => String.fromCodePoint(from + index));

const ASCII = span(0x20, 0x7e);
const SIGNS = [
  ...span(0xa0, 0x17f), // Latin with accents, ° · ² ³ ½
  ...span(0x370, 0x3ff), // Greek
  ...span(0x400, 0x45f), // Cyrillic
  ...span(0x1e80, 0x1ef9), // Latin with two accents
  ...'–—‘’“”„…•‰′″⁄₀₁₂₃₄₅₆₇₈₉⁰⁴⁵⁶⁷⁸⁹←↑→↓−×÷±≈≠≤≥∞√∂∑∆\u2009\u202f',
];
const KERNED = [...ASCII, ...'°·²³–−×…±→λΔηρ\u00a0\u202f'];

/** Left to itself, fontkit kerns a pair without a letter twice: it has no script of its own. Browser and rasteriser kern it once. */
const SCRIPT = 'latn';

function widthsOf(font: Font) {
  const advance = (sign: string) => font.glyphForCodePoint(sign.codePointAt(0) ?? 0).advanceWidth;
  const known = [...ASCII, ...SIGNS].filter((sign) => font.hasGlyphForCodePoint(sign.codePointAt(0) ?? 0));
  const kerning: Record<string, number> = {};
  for (const first of KERNED) {
    for (const second of KERNED) {
      const shift =
        font.layout(first + second, undefined, SCRIPT).advanceWidth - advance(first) - advance(second);
      if (shift !== 0) kerning[first + second] = shift;
    }
  }
  return {
    unitsPerEm: font.unitsPerEm,
    advances: Object.fromEntries(known.map((sign) => [sign, advance(sign)])),
    kerning,
  };
}

const faces = Object.entries(FONT_FILES).map(([face, file]) => [
  face,
  widthsOf(openSync(fileURLToPath(file.url))),
]);
const write = (name: string, value: unknown) =>
  writeFileSync(new URL(`../src/${name}`, import.meta.url), `${JSON.stringify(value)}\n`);
write('font-widths.generated.json', Object.fromEntries(faces));

/** Code points that at least one of the files has, as first and last of each unbroken run. */
const points = Object.values(FONT_FILES).flatMap(({ url }) => openSync(fileURLToPath(url)).characterSet);
const runs: [number, number][] = [];
for (const point of [...new Set(points)].sort((one, other) => one - other)) {
  const last = runs.at(-1);
  if (last && last[1] + 1 >= point) last[1] = point;
  else runs.push([point, point]);
}
write('font-signs.generated.json', runs.flat());
