import { endMark } from './end-mark.ts';
import type { LineStyle, SceneNode, ThemeName } from './model.ts';
import { drawnStyle } from './palette.ts';
import type { Proportions } from './proportions.ts';
import { straight, textAt } from './scene-node.ts';
import { shortened, textWidth } from './text-width.ts';
import { THEMES } from './theme.ts';

export interface NamedLine {
  style: LineStyle;
  key: string;
  name: string;
  /** From the left edge, and which row. */
  x: number;
  row: number;
  /** What stands at its end in the first panel, behind the name or under it; `null`: not said here. */
  value: { text: string; x: number; row: number } | null;
}

/** The names that found a place, and how many did not. */
export interface NameRows {
  named: NamedLine[];
  /** `and 4 more`, behind the last one; `null`: all are named. */
  more: { text: string; x: number; row: number } | null;
}

type Labelled = { style: LineStyle; label: { key: string; name: string; value?: string | null } | null };

const AFTER_SAMPLE_EM = 0.55;
const BETWEEN_EM = 1.4;
const PART_EM = 0.4;
/** Names side by side at most, each cut to its share of the width, before some are only counted. */
const MOST_BESIDE = 4;
const LEAST_NAME_EM = 4;

/**
 * The combinations of a drawing in rows, each once, where it is too narrow to name them beside their lines. With their figures behind
 * the names or under them, where all find room whole; then without. Where even that takes more rows than there are, names are cut
 * so that two, three, four stand side by side; then the last ones are only counted, and fewer than half are not worth their room.
 */
export function nameRows(lines: readonly Labelled[], widthPx: number, proportions: Proportions): NameRows {
  const { mostNameRows, text, valuesOnTop, sample } = proportions;
  const every = lines.flatMap(({ style, label }, index) =>
    label && style !== 'ink' && lines.findIndex((one) => one.label?.key === label.key) === index
      ? [{ style, ...label }]
      : [],
  );
  const isWhole = (named: NamedLine[]) =>
    named.every(({ name }, index) => name === every[index]!.name) && rowsOf(named) <= mostNameRows;
  if (valuesOnTop) {
    for (const values of ['behind', 'under'] as const) {
      const named = inRows(every, widthPx, widthPx, proportions, values);
      if (isWhole(named)) return { named, more: null };
    }
  }
  let named: NamedLine[] = [];
  for (let beside = 1; beside <= MOST_BESIDE; beside += 1) {
    const share = (widthPx - (beside - 1) * BETWEEN_EM * text) / beside;
    if (beside > 1 && share < sample + (AFTER_SAMPLE_EM + LEAST_NAME_EM) * text) break;
    named = inRows(every, widthPx, share, proportions, 'none');
    if (rowsOf(named) <= mostNameRows) return { named, more: null };
  }
  const kept = named.filter(({ row }) => row < mostNameRows);
  while (kept.length > 0 && kept.length >= every.length / 2) {
    const words = `and ${every.length - kept.length} more`;
    const last = kept.at(-1)!;
    const x = last.x + nameWidth(last, proportions) + BETWEEN_EM * text;
    if (x + textWidth(words, text, 'sans') <= widthPx)
      return { named: kept, more: { text: words, x, row: last.row } };
    kept.pop();
  }
  return { named: [], more: null };
}

const rowsOf = (named: readonly NamedLine[]): number =>
  named.length === 0 ? 0 : Math.max(...named.map(({ row, value }) => Math.max(row, value?.row ?? 0))) + 1;

function inRows(
  lines: readonly { style: LineStyle; key: string; name: string; value?: string | null }[],
  widthPx: number,
  mostWidth: number,
  proportions: Proportions,
  values: 'none' | 'behind' | 'under',
): NamedLine[] {
  const { text, sample } = proportions;
  const named: NamedLine[] = [];
  let x = 0;
  let row = 0;
  for (const { style, key, name, value } of lines) {
    const said = values === 'none' || !value ? null : value;
    const valueWidth = said === null ? 0 : textWidth(said, text, 'sansStrong');
    const behind = values === 'behind' && said !== null ? PART_EM * text + valueWidth : 0;
    const before = nameWidth({ key, name: '' }, proportions) + PART_EM * text;
    const shown = shortened(name, mostWidth - before - behind, text, 'sans');
    const ownWidth = nameWidth({ key, name: shown }, proportions);
    const width = ownWidth + behind;
    if (x > 0 && (x + width > widthPx || values === 'under')) {
      x = 0;
      row += 1;
    }
    const place = { style, key, name: shown, x, row };
    if (said === null) named.push({ ...place, value: null });
    else if (values === 'behind')
      named.push({ ...place, value: { text: said, x: x + ownWidth + PART_EM * text, row } });
    else {
      row += 1;
      named.push({ ...place, value: { text: said, x: sample + AFTER_SAMPLE_EM * text, row } });
    }
    x += width + BETWEEN_EM * text;
  }
  return named;
}

function nameWidth({ key, name }: Pick<NamedLine, 'key' | 'name'>, { text, sample }: Proportions): number {
  const beforeName = name === '' ? 0 : PART_EM * text + textWidth(name, text, 'sans');
  return sample + AFTER_SAMPLE_EM * text + textWidth(key, text, 'sansStrong') + beforeName;
}

export const nameRowsHeight = ({ named }: NameRows, { row, text }: Proportions): number =>
  named.length === 0 ? 0 : rowsOf(named) * row * 1.15 + 0.3 * text;

export function drawNameRows(
  { named, more }: NameRows,
  left: number,
  top: number,
  proportions: Proportions,
  look: { theme: ThemeName; ground: string },
): SceneNode[] {
  const { text, row, meanLine, mark, sample } = proportions;
  const baselineOf = (line: { row: number }) => top + (line.row + 0.5) * row * 1.15 + 0.36 * text;
  const names = named.flatMap((line) => {
    const { colour, dash, mark: shape } = drawnStyle(line.style, look.theme);
    const x = left + line.x;
    const baseline = baselineOf(line);
    const middle = baseline - 0.36 * text;
    const keyX = x + sample + AFTER_SAMPLE_EM * text;
    const nameX = keyX + textWidth(line.key, text, 'sansStrong') + PART_EM * text;
    const strong = { sizePx: text, face: 'sansStrong', colour } as const;
    const { value } = line;
    return [
      straight(x, middle, x + sample, middle, { colour, widthPx: meanLine, dash }),
      endMark(shape, x + sample, middle, { colour, ground: look.ground, radiusPx: mark }),
      textAt(keyX, baseline, line.key, strong),
      ...(line.name === ''
        ? []
        : [textAt(nameX, baseline, line.name, { sizePx: text, face: 'sans', colour })]),
      ...(value === null ? [] : [textAt(left + value.x, baselineOf(value), value.text, strong)]),
    ];
  });
  if (more === null) return names;
  const soft = { sizePx: text, face: 'sans', colour: THEMES[look.theme].softInk } as const;
  return [...names, textAt(left + more.x, baselineOf(more), more.text, soft)];
}
