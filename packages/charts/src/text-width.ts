import table from './font-widths.generated.json' with { type: 'json' };
import type { Face } from './fonts.ts';
import { roomOfUnknown, unbreakable } from './sign-room.ts';

interface FaceWidths {
  unitsPerEm: number;
  advances: Record<string, number>;
  kerning: Record<string, number>;
}

const WIDTHS: Record<Face, FaceWidths> = table;

/**
 * Width of a line of text, px: advances and kerning of the shipped fonts, out of a table, so that a page, a test and
 * the rasteriser's process lay a chart out alike. A sign that is not in the table counts what it may take at most.
 *
 * @example textWidth('538 hp', 13, 'sans')
 */
export function textWidth(text: string, sizePx: number, face: Face): number {
  const { unitsPerEm, advances, kerning } = WIDTHS[face];
  let units = 0;
  let before = '';
  for (const sign of text) {
    units += (advances[sign] ?? unitsPerEm * roomOfUnknown(sign)) + (kerning[before + sign] ?? 0);
    before = sign;
  }
  return (units / unitsPerEm) * sizePx;
}

/** The text, or as much of it as fits with an ellipsis at its end; '' where not even that fits. */
export function shortened(text: string, widthPx: number, sizePx: number, face: Face): string {
  if (textWidth(text, sizePx, face) <= widthPx) return text;
  const signs = [...text];
  const beginning = (count: number) =>
    `${signs
      .slice(0, count)
      .join('')
      .replace(/[\s,;:·(-]+$/u, '')}…`;
  let [fits, tooLong] = [0, signs.length];
  while (tooLong - fits > 1) {
    const count = (fits + tooLong) >> 1;
    if (textWidth(beginning(count), sizePx, face) <= widthPx) fits = count;
    else tooLong = count;
  }
  return fits === 0 ? '' : beginning(fits);
}

/** The text in lines no wider than asked, broken where its script allows. A word wider than a line is shortened. */
export function wrapped(text: string, widthPx: number, sizePx: number, face: Face): string[] {
  const lines: string[] = [];
  let width = 0;
  const parts = unbreakable(text).flatMap(({ part, spaceBefore }) =>
    part.includes(' ') && textWidth(part, sizePx, face) > widthPx
      ? part.split(' ').map((word) => ({ part: word, spaceBefore: true }))
      : [{ part, spaceBefore }],
  );
  for (const { part, spaceBefore } of parts) {
    const last = lines.at(-1);
    if (last !== undefined) {
      const added = `${spaceBefore ? ' ' : ''}${part}`;
      // With the sign before, since the two may be kerned.
      const before = [...last.slice(-2)].at(-1)!;
      const longer = width + textWidth(before + added, sizePx, face) - textWidth(before, sizePx, face);
      if (longer <= widthPx) {
        lines[lines.length - 1] = last + added;
        width = longer;
        continue;
      }
    }
    const begun = shortened(part, widthPx, sizePx, face);
    lines.push(begun);
    width = textWidth(begun, sizePx, face);
  }
  return lines;
}

/** The same in as few lines, of about one length: no line is left with a word or two. */
export function balanced(text: string, widthPx: number, sizePx: number, face: Face): string[] {
  let best = wrapped(text, widthPx, sizePx, face);
  if (best.length < 2) return best;
  for (let share = 0.98; share > 0.5; share -= 0.02) {
    const narrower = wrapped(text, share * widthPx, sizePx, face);
    // A narrower line must not cost a word its end.
    if (narrower.length > best.length || narrower.join('').length < best.join('').length) break;
    best = narrower;
  }
  return best;
}
