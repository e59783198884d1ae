import { endMark } from './end-mark.ts';
import type { LineStyle, SceneNode, ThemeName } from './model.ts';
import { drawnStyle } from './palette.ts';
import type { Proportions } from './proportions.ts';
import { straight, textAt } from './scene-node.ts';
import { shortened, textWidth } from './text-width.ts';

export interface NamedLine {
  style: LineStyle;
  key: string;
  name: string;
  /** From the left edge, and which row. */
  x: number;
  row: number;
}

const SAMPLE_EM = 2.4;
const AFTER_SAMPLE_EM = 0.6;
const BETWEEN_EM = 1.4;

/** The combinations of a drawing in rows, each once, where it is too narrow to name them beside their lines. */
export function namedLines(
  lines: readonly { style: LineStyle; label: { key: string; name: string } | null }[],
  widthPx: number,
  { text }: Proportions,
): NamedLine[] {
  const named: NamedLine[] = [];
  let x = 0;
  let row = 0;
  for (const { style, label } of lines) {
    if (!label || style === 'ink' || named.some(({ key }) => key === label.key)) continue;
    const before = (SAMPLE_EM + AFTER_SAMPLE_EM + 0.4) * text + textWidth(label.key, text, 'sansStrong');
    const name = shortened(label.name, widthPx - before, text, 'sans');
    const width = before + textWidth(name, text, 'sans');
    if (x > 0 && x + width > widthPx) {
      x = 0;
      row += 1;
    }
    named.push({ style, key: label.key, name, x, row });
    x += width + BETWEEN_EM * text;
  }
  return named;
}

export const nameRowsHeight = (named: NamedLine[], { row, text }: Proportions): number =>
  named.length === 0 ? 0 : ((named.at(-1)?.row ?? 0) + 1) * row * 1.15 + 0.3 * text;

export function drawNameRows(
  named: NamedLine[],
  left: number,
  top: number,
  proportions: Proportions,
  look: { theme: ThemeName; ground: string },
): SceneNode[] {
  const { text, row, meanLine, mark } = proportions;
  return named.flatMap((line) => {
    const { colour, dash, mark: shape } = drawnStyle(line.style, look.theme);
    const x = left + line.x;
    const middle = top + (line.row + 0.5) * row * 1.15;
    const baseline = middle + 0.36 * text;
    const after = x + (SAMPLE_EM + AFTER_SAMPLE_EM) * text;
    const keyWidth = textWidth(line.key, text, 'sansStrong');
    return [
      straight(x, middle, x + SAMPLE_EM * text, middle, { colour, widthPx: meanLine, dash }),
      endMark(shape, x + SAMPLE_EM * text, middle, { colour, ground: look.ground, radiusPx: mark }),
      textAt(after, baseline, line.key, { sizePx: text, face: 'sansStrong', colour }),
      ...(line.name === ''
        ? []
        : [
            textAt(after + keyWidth + 0.4 * text, baseline, line.name, {
              sizePx: text,
              face: 'sans',
              colour,
            }),
          ]),
    ];
  });
}
