import { drawnStyle, THEMES } from '@pullbook/charts';
import type { ShownTable } from '@pullbook/views';
import { isFigureColumn } from '../report/figure-column.ts';
import { rowName } from '../report/row-name.ts';
import type { PdfFlow } from './pdf-flow.ts';
import { type Run, widthOf } from './pdf-lines.ts';

/** Of a table's text, points. */
export const SIZE = 8;
export const PAD = { x: 5, y: 1.6 } as const;
export const INK = THEMES.light.ink;
/** A column narrower than this reads as a ladder of words. */
const LEAST_COLUMN = 38;
/** Of the page's width: broad enough for words. */
const READABLE = 0.2;
/** Columns no wider than these shares of the page are never broken. */
const SHORT = 0.14;
const SHORT_NAMES = 0.24;

/** Of a sample of a line, and of it with the gap behind. */
export const SWATCH = 16;
export const swatchRoom = (combination: number | null): number => (combination === null ? 0 : SWATCH + 4);

/** A column with its texts and how wide it would be. */
export interface Column {
  head: Run;
  combination: number | null;
  cells: Run[];
  isFigures: boolean;
  /** Of its longest line, and of its longest word. */
  natural: number;
  least: number;
  /** Of all its text in one line. */
  text: number;
}

/** The rows' names, then the table's columns. */
export function columnsOf(flow: PdfFlow, { columns, rows }: ShownTable): Column[] {
  const run = (text: string, strong = false, colour: string = INK): Run => ({
    text,
    face: strong ? 'sansStrong' : 'sans',
    size: SIZE,
    colour,
  });
  const made = [
    { head: run('', true), combination: null, cells: rows.map((row) => run(rowName(row))) },
    ...columns.map(({ text, combination }, place) => ({
      head: run(text, true, combination === null ? INK : drawnStyle({ combination }, 'light').colour),
      combination,
      cells: rows.map(({ cells }) => run(cells[place] ?? '')),
    })),
  ];
  return made.map((column, place) => {
    const all = [column.head, ...column.cells];
    const words = all.flatMap((one) => one.text.split(/[ \n]+/u).map((word) => widthOf(flow.pdf, one, word)));
    const swatch = swatchRoom(column.combination);
    const natural = 2 * PAD.x + swatch + Math.max(...all.map((one) => widthOf(flow.pdf, one, one.text)));
    const word = 2 * PAD.x + swatch + Math.max(...words);
    const isShort = natural <= (place === 0 ? SHORT_NAMES : SHORT) * flow.width;
    return {
      ...column,
      isFigures: place > 0 && isFigureColumn(column.cells.map(({ text }) => text)),
      text: all.reduce((sum, one) => sum + widthOf(flow.pdf, one, one.text), 0),
      natural,
      least:
        isShort || place === 0
          ? Math.min(natural, SHORT_NAMES * flow.width)
          : Math.max(LEAST_COLUMN, Math.min(0.4 * flow.width, word)),
    };
  });
}

/** Columns together as long as they fit beside the names. */
export function partsOf(names: Column, others: readonly Column[], width: number): Column[][] {
  const parts: Column[][] = [];
  let part: Column[] = [names];
  let used = names.least;
  for (const column of others) {
    if (part.length > 1 && used + column.least > width) {
      parts.push(part);
      part = [names];
      used = names.least;
    }
    part.push(column);
    used += column.least;
  }
  return [...parts, part];
}

/** Each column as wide as it likes; where that is too much, by how much text it has, between its longest word and its longest line. */
export function widthsOf(columns: readonly Column[], width: number): number[] {
  const natural = columns.reduce((sum, one) => sum + one.natural, 0);
  if (natural <= width) {
    // Figures stay near their names: the table is only as wide as it has to be, up to half as much again.
    const widen = Math.min(width / natural, 1.5);
    return columns.map((one) => one.natural * widen);
  }
  // Where there is room no column is a ladder of words beside a broad one.
  const wide = columns.map((one) => Math.max(one.least, READABLE * width));
  const fits =
    wide.reduce((sum, one, place) => sum + Math.min(one, columns[place]!.natural), 0) <= 0.92 * width;
  const share = (level: number) =>
    columns.map((one, place) =>
      Math.max(
        Math.min(fits ? wide[place]! : one.least, one.natural),
        Math.min(one.natural, level * one.text),
      ),
    );
  let [low, high] = [0, 1];
  for (let step = 0; step < 40; step += 1) {
    const middle = (low + high) / 2;
    if (share(middle).reduce((sum, one) => sum + one, 0) > width) high = middle;
    else low = middle;
  }
  return share(low);
}
