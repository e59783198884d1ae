import table from './font-widths.generated.json' with { type: 'json' };
import type { Face } from './fonts.ts';

interface FaceWidths {
  unitsPerEm: number;
  advances: Record<string, number>;
  kerning: Record<string, number>;
}

const WIDTHS: Record<Face, FaceWidths> = table;

/**
 * Width of a line of text, px: advances and kerning of the shipped fonts, out of a table, so that a page, a test and
 * the rasteriser's process lay a chart out alike. A sign that the fonts do not have counts one em.
 *
 * @example textWidth('538 hp', 13, 'sans')
 */
export function textWidth(text: string, sizePx: number, face: Face): number {
  const { unitsPerEm, advances, kerning } = WIDTHS[face];
  let units = 0;
  let before = '';
  for (const sign of text) {
    units += (advances[sign] ?? unitsPerEm) + (kerning[before + sign] ?? 0);
    before = sign;
  }
  return (units / unitsPerEm) * sizePx;
}

/** The text, or as much of it as fits with an ellipsis at its end; '' where not even that fits. */
export function shortened(text: string, widthPx: number, sizePx: number, face: Face): string {
  if (textWidth(text, sizePx, face) <= widthPx) return text;
  const signs = [...text];
  for (let count = signs.length - 1; count > 0; count -= 1) {
    const candidate = `${signs
      .slice(0, count)
      .join('')
      .replace(/[\s,;:·(-]+$/u, '')}…`;
    if (textWidth(candidate, sizePx, face) <= widthPx) return candidate;
  }
  return '';
}

/** The text in lines no wider than asked, broken at spaces. A word wider than a line is shortened. */
export function wrapped(text: string, widthPx: number, sizePx: number, face: Face): string[] {
  const lines: string[] = [];
  for (const word of text.split(/ +/u).filter((part) => part !== '')) {
    const last = lines.at(-1);
    const joined = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && textWidth(joined, sizePx, face) <= widthPx) lines[lines.length - 1] = joined;
    else lines.push(shortened(word, widthPx, sizePx, face));
  }
  return lines;
}

/** The same in as few lines, of about one length: no line is left with a word or two. */
export function balanced(text: string, widthPx: number, sizePx: number, face: Face): string[] {
  let best = wrapped(text, widthPx, sizePx, face);
  for (let share = 0.98; share > 0.5; share -= 0.02) {
    const narrower = wrapped(text, share * widthPx, sizePx, face);
    if (narrower.length > best.length) break;
    best = narrower;
  }
  return best;
}
