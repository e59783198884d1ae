/**
 * Writes `src/font-widths.generated.json`: the advance of every sign that charts use and the kerning between the
 * common ones, read from the shipped TTFs. Run after changing a font: `npx tsx packages/charts/tools/make-font-widths.ts`.
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
  ...span(0x391, 0x3c9), // Greek
  ...'–—‘’“”„…•‰′″⁄₀₁₂₃₄₅₆₇₈₉⁰⁴⁵⁶⁷⁸⁹←↑→↓−×÷±≈≠≤≥∞√∂∑∆\u2009\u202f',
];
const KERNED = [...ASCII, ...'°·²³–−×…±→λΔηρ\u00a0\u202f'];

function widthsOf(font: Font) {
  const advance = (sign: string) => font.glyphForCodePoint(sign.codePointAt(0) ?? 0).advanceWidth;
  const known = [...ASCII, ...SIGNS].filter((sign) => font.hasGlyphForCodePoint(sign.codePointAt(0) ?? 0));
  const kerning: Record<string, number> = {};
  for (const first of KERNED) {
    for (const second of KERNED) {
      const shift = font.layout(first + second).advanceWidth - advance(first) - advance(second);
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
const target = new URL('../src/font-widths.generated.json', import.meta.url);
writeFileSync(target, `${JSON.stringify(Object.fromEntries(faces))}\n`);
