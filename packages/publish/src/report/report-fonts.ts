import { readFile } from 'node:fs/promises';
import { FACES, FONT_FILES } from '@pullbook/charts';
import subsetFont from 'subset-font';
import { fontPathOf } from '../font-folder.ts';

/** `@font-face` rules that carry the shipped letters, no more of them than the text uses. */
export async function fontRules(text: string): Promise<string> {
  const signs = [...new Set(text)].sort().join('');
  const rules = await Promise.all(
    FACES.map(async (face) => {
      const font = await subsetFont(await readFile(fontPathOf(face)), signs, { targetFormat: 'woff2' });
      const { family, weight } = FONT_FILES[face];
      return `@font-face{font-family:'${family}';font-weight:${weight};src:url(data:font/woff2;base64,${font.toString('base64')}) format('woff2')}`;
    }),
  );
  return rules.join('\n');
}
