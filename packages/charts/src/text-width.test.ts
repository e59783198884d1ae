import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { openSync } from 'fontkit';
import { describe, expect, test } from 'vitest';
import { type Face, FONT_FILES } from './fonts.ts';
import { balanced, shortened, textWidth, wrapped } from './text-width.ts';

const FACES = Object.keys(FONT_FILES) as Face[];
const SAMPLES = [
  'It adds 15 hp on average from 4,000 to 6,500 rpm, and takes 1.1 psi off the boost.',
  'Torque lb-ft, SAE J1349',
  'AVATAR To We',
  'λ 0.79 · Δ −1.1 psi ± 0.2 · 84 °F → 92 °F · η ≤ 1 · ρ · m² · m³',
  'Größere Nocke, côté échappement',
  // Figures alone: pairs that are kerned, and no letter beside them.
  '−7.1',
  '+7.0',
  '17,471.1',
];

describe('textWidth', () => {
  // The outside source is the font itself, laid out by fontkit (GPOS kerning, ligatures and all). Its script is said, since without a
  // letter fontkit kerns twice; `checks/publish/in-browser` asks a browser.
  test.each(FACES)('agrees with the TTF of %s', (face) => {
    const font = openSync(fileURLToPath(FONT_FILES[face].url));
    for (const text of SAMPLES) {
      const truth = (font.layout(text, undefined, 'latn').advanceWidth / font.unitsPerEm) * 100;
      expect(Math.abs(textWidth(text, 100, face) / truth - 1), text).toBeLessThan(0.01);
    }
  });

  test.each(FACES)('%s has every sign that figures are written with', (face) => {
    const font = openSync(fileURLToPath(FONT_FILES[face].url));
    for (const sign of 'ληΔρ°·²³≤±→−×…–’') {
      expect(font.hasGlyphForCodePoint(sign.codePointAt(0) ?? 0), sign).toBe(true);
    }
  });

  test('grows with the size and with the text', () => {
    const words = fc.string({ maxLength: 40 });
    const size = fc.integer({ min: 6, max: 120 });
    fc.assert(
      fc.property(words, size, (text, sizePx) => {
        expect(textWidth(text, 2 * sizePx, 'sans')).toBeCloseTo(2 * textWidth(text, sizePx, 'sans'), 6);
        expect(textWidth(`${text}mm`, sizePx, 'sans')).toBeGreaterThan(textWidth(text, sizePx, 'sans'));
      }),
      { seed: 1 },
    );
  });
});

describe('fitting', () => {
  const text = fc.lorem({ maxCount: 20 });
  const width = fc.integer({ min: 5, max: 400 });

  test('a shortened text fits and is a beginning of the text', () => {
    fc.assert(
      fc.property(text, width, (words, widthPx) => {
        const short = shortened(words, widthPx, 14, 'sans');
        expect(textWidth(short, 14, 'sans')).toBeLessThanOrEqual(widthPx);
        expect(words.startsWith(short.replace(/…$/u, ''))).toBe(true);
      }),
      { seed: 2 },
    );
  });

  test('wrapped lines fit and keep every word', () => {
    fc.assert(
      fc.property(text, (words) => {
        const lines = wrapped(words, 160, 14, 'serifStrong');
        for (const line of lines) expect(textWidth(line, 14, 'serifStrong')).toBeLessThanOrEqual(160);
        expect(lines.join(' ')).toBe(words);
      }),
      { seed: 3 },
    );
  });

  test('balanced lines are as few, keep every word, and none is longer than the longest was', () => {
    const longest = (lines: string[]) => Math.max(0, ...lines.map((line) => textWidth(line, 14, 'sans')));
    fc.assert(
      fc.property(text, (words) => {
        const plain = wrapped(words, 200, 14, 'sans');
        const even = balanced(words, 200, 14, 'sans');
        expect(even).toHaveLength(plain.length);
        expect(even.join(' ')).toBe(words);
        expect(longest(even)).toBeLessThanOrEqual(longest(plain));
      }),
      { seed: 4 },
    );
    const room = textWidth('aa aa aa aa', 20, 'sans') + 1;
    expect(wrapped('aa aa aa aa b', room, 20, 'sans')).toEqual(['aa aa aa aa', 'b']);
    expect(balanced('aa aa aa aa b', room, 20, 'sans')).toEqual(['aa aa', 'aa aa b']);
  });
});
