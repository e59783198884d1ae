import { fileURLToPath } from 'node:url';
import { openSync } from 'fontkit';
import { expect, test } from 'vitest';
import { FONT_FILES } from './fonts.ts';
import { SHORT_WORDS } from './invented-still.test-support.ts';
import { missingSigns } from './missing-signs.ts';
import { drawStill } from './still.ts';
import { textWidth, wrapped } from './text-width.ts';

const node = (text: string) => ({ tag: 'text' as const, attributes: {}, children: [], text });

test('says of each sign whether one of the shipped fonts has it, as the fonts themselves do', () => {
  const fonts = Object.values(FONT_FILES).map(({ url }) => openSync(fileURLToPath(url)));
  let missing = 0;
  for (let point = 0x21; point < 0x3200; point += 7) {
    const sign = String.fromCodePoint(point);
    if (/[\p{Cf}\p{Cc}\p{Z}]/u.test(sign)) continue;
    const isShipped = fonts.some((font) => font.hasGlyphForCodePoint(point));
    if (!isShipped) missing += 1;
    expect(missingSigns({ nodes: [node(sign)] }), point.toString(16)).toEqual(isShipped ? [] : [sign]);
  }
  expect(missing).toBeGreaterThan(100);
});

test('names each sign of a picture once, wherever it stands', () => {
  const still = {
    ...SHORT_WORDS,
    headline: '\u6392\u6c17\u6392 and \u0416',
    body: { kind: 'words' as const, paragraphs: [{ text: '\u0e01 \u2192 \u00b0' }] },
  };
  const scene = drawStill(still, { width: 1920, height: 1080, theme: 'dark', ground: true });
  expect(missingSigns(scene)).toEqual(['\u6392', '\u6c17', '\u0e01']);
});

test('signs that no shipped font has get room: square ones an em, marks on others none', () => {
  expect(textWidth('\u6392\u6c17', 20, 'sans')).toBeCloseTo(40, 6);
  expect(textWidth('\u{1f3c1}', 20, 'sans')).toBeGreaterThan(20);
  expect(textWidth('\u0e01\u0e31', 20, 'sans')).toBeCloseTo(20, 6);
});

test('a script written without spaces is broken between its signs, closing ones stay with what they close', () => {
  const lines = wrapped('\u6392\u6c17\u7ba1\u3001\u6392\u6c17', 60, 20, 'sans');
  expect(lines).toEqual(['\u6392\u6c17', '\u7ba1\u3001\u6392', '\u6c17']);
});
