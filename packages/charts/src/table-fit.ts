import type { CardCell, LineStyle, PictureBody } from './model.ts';
import { balanced, shortened, textWidth, wrapped } from './text-width.ts';

type Table = Extract<PictureBody, { kind: 'table' }>;

/** What of a table is shown, and where. Places from its left edge, px. */
export interface TableFit {
  sizePx: number;
  rowPx: number;
  headPx: number;
  hasSamples: boolean;
  hasUnits: boolean;
  widthPx: number;
  columns: { head: string[]; unit: string; style: LineStyle; left: number; width: number }[];
  rows: CardCell[][];
  /** What was left out, in words; '' nothing. */
  note: string;
}

interface Room {
  width: number;
  height: number;
}

const LARGEST = 1.5;
const STEP = 0.05;
const LEAST_ROW_EM = 1.4;
const MOST_ROW_EM = 2;
const LEAST_GAP_EM = 0.9;
const MOST_GAP_EM = 9;
/** Of the table's width: so that two columns always find room. */
const MOST_SHARE = { first: 0.45, other: 0.4 };

/**
 * Room for a column's name, the easiest first, and how many rows left out it is worth not to have to go on to the next: a name that
 * is cut costs more than one in three lines.
 */
const HEADS = [
  { em: 7.5, lines: 2, worth: 0 },
  { em: 4.2, lines: 3, worth: 0.5 },
  { em: 4.2, lines: 2, worth: 1 },
  { em: 9, lines: 1, worth: 1 },
  { em: 6, lines: 1, worth: 1.5 },
  { em: 4.2, lines: 1, worth: 2 },
] as const;
type Head = { em: number; lines: number };
const SHORTEST = HEADS[5];
/** Where all columns have room for it, a name in one line is the calmest. */
const ONE_LINE: Head = { em: 14, lines: 1 };
/** The same of a column that is left out. */
const COLUMN_WORTH = 1.2;

const ORDINALS: Record<number, string> = { 2: 'second', 3: 'third', 4: 'fourth', 5: 'fifth', 6: 'sixth' };

/**
 * How a table is made to fit: letters smaller down to the least size, then narrower names of columns, then columns left out from the
 * right (first all of a combination's own, so that differences stay; never the first one), then every second row, every third
 * and so on. The highest speed and rows whose first cell is strong stay.
 */
export function tableFit(table: Table, room: Room, least: number): TableFit {
  const every = table.columns.map((_, index) => index);
  for (let scale = LARGEST; scale > 1 - STEP / 2; scale -= STEP) {
    const sizePx = Math.max(1, scale) * least;
    const inOneLine = fitted(table, every, table.rows, sizePx, ONE_LINE, room, '');
    if (inOneLine?.columns.every(({ head }, index) => head.join('') === table.columns[index]?.text))
      return inOneLine;
    const found = fitted(table, every, table.rows, sizePx, HEADS[0], room, '');
    if (found) return found;
  }
  const tried = HEADS.map((head) => ({ ...thinned(table, room, least, head), worth: head.worth }));
  const cost = ({ fit, step, worth }: (typeof tried)[number]) =>
    step + worth + COLUMN_WORTH * (every.length - fit.columns.length);
  return tried.reduce((one, other) => (cost(other) < cost(one) ? other : one)).fit;
}

function thinned(table: Table, room: Room, least: number, head: Head): { fit: TableFit; step: number } {
  const every = table.columns.map((_, index) => index);
  let shown = every;
  while (shown.length > 2 && !hasWidth(table, shown, least, head, room.width)) {
    const differences = shown.filter(
      (column, index) => index === 0 || table.columns[column]!.style === 'ink',
    );
    // Both sides of a difference or neither: a baseline without its change says little.
    const isFewer = differences.length > 1 && differences.length < shown.length;
    shown = isFewer ? differences : shown.slice(0, -1);
  }
  const of = shown.length === every.length ? '' : `${shown.length} of ${every.length} columns`;
  const last = table.rows.length - 1;
  const lastPlain = table.rows.findLastIndex(([first]) => !first?.strong);
  for (let step = 1; step <= table.rows.length; step += 1) {
    const rows = table.rows.filter((row, index) => row[0]?.strong || (lastPlain - index) % step === 0);
    const fit = fitted(table, shown, rows, least, head, room, noteOf(step, of));
    if (fit) return { fit, step };
  }
  // Strong rows alone are too many, or there is hardly any height: as many of the last ones as have room.
  const strong = table.rows.filter(([first], index) => first?.strong || index === last);
  for (let count = strong.length; count > 0; count -= 1) {
    const fit = fitted(table, shown, strong.slice(-count), least, head, room, '');
    if (fit) return { fit, step: Number.POSITIVE_INFINITY };
  }
  const high = { ...room, height: Number.POSITIVE_INFINITY };
  const bare = fitted(table, shown.slice(0, 2), [], least, SHORTEST, high, '')!;
  return { fit: { ...bare, rowPx: 0 }, step: Number.POSITIVE_INFINITY };
}

function noteOf(step: number, columns: string): string {
  const rows = step === 1 ? '' : `every ${ORDINALS[step] ?? `${step}th`} row`;
  return [rows, columns]
    .filter(Boolean)
    .join(' · ')
    .replace(/^./u, (sign) => sign.toUpperCase());
}

function fitted(
  table: Table,
  shown: number[],
  rows: CardCell[][],
  sizePx: number,
  head: Head,
  room: Room,
  note: string,
): TableFit | null {
  const columns = columnsAt(table, shown, sizePx, head, room.width);
  const natural = columns.reduce((sum, { width }) => sum + width, 0);
  const gap = Math.min(MOST_GAP_EM * sizePx, (room.width - natural) / Math.max(1, columns.length - 1));
  if (columns.length > 1 && gap < LEAST_GAP_EM * sizePx) return null;
  const hasSamples = columns.some(({ style }) => style !== 'ink');
  const hasUnits = columns.some(({ unit }) => unit !== '');
  const headLines = Math.max(1, ...columns.map((column) => column.head.length));
  const headPx = ((hasSamples ? 0.55 : 0) + (hasUnits ? 1.2 : 0) + 1.2 * headLines + 0.45) * sizePx;
  const free = room.height - headPx - (note === '' ? 0 : 1.8 * sizePx);
  if (rows.length * LEAST_ROW_EM * sizePx > free) return null;
  let left = 0;
  const placed = columns.map((column) => {
    const one = { ...column, left };
    left += column.width + gap;
    return one;
  });
  return {
    sizePx,
    rowPx: Math.min(MOST_ROW_EM * sizePx, free / Math.max(1, rows.length)),
    headPx,
    hasSamples,
    hasUnits,
    widthPx: left - gap,
    columns: placed,
    rows: rows.map((row) => shown.map((column) => row[column] ?? { text: '', style: 'ink' as const })),
    note,
  };
}

/** As wide as what stands in them; where that is too much together, none wider than its share. */
function columnsAt(table: Table, shown: number[], sizePx: number, head: Head, tableWidth: number) {
  const columns = shown.map((column) => columnAt(table, column, sizePx, head));
  if (widthOf(columns, sizePx) <= tableWidth) return columns;
  return columns.map((column, index) => {
    const most = (index === 0 ? MOST_SHARE.first : MOST_SHARE.other) * tableWidth;
    return { ...column, width: Math.min(most, column.width) };
  });
}

const widthOf = (columns: { width: number }[], sizePx: number): number =>
  columns.reduce((sum, { width }) => sum + width, 0) + (columns.length - 1) * LEAST_GAP_EM * sizePx;

function columnAt({ columns, rows }: Table, column: number, sizePx: number, room: Head) {
  const { text, unit, style } = columns[column]!;
  const head = headLines(text, sizePx, room);
  const widths = [
    ...head.map((line) => textWidth(line, sizePx, 'sansStrong')),
    textWidth(unit, sizePx, 'sans'),
    ...rows.map((row) => {
      const cell = row[column];
      return cell ? textWidth(cell.text, sizePx, cell.strong || column === 0 ? 'sansStrong' : 'sans') : 0;
    }),
  ];
  return { head, unit, style, width: Math.max(...widths) };
}

/** A column's name in its lines, as narrow as its words let it be. */
function headLines(text: string, sizePx: number, { em, lines: most }: Head): string[] {
  if (text === '') return [];
  const room = em * sizePx;
  const whole = balanced(text, room, sizePx, 'sansStrong');
  if (whole.length <= most) return whole;
  const lines = wrapped(text, room, sizePx, 'sansStrong');
  const rest = lines.slice(most - 1).join(' ');
  return [...lines.slice(0, most - 1), shortened(rest, room, sizePx, 'sansStrong')];
}

const hasWidth = (table: Table, shown: number[], sizePx: number, head: Head, tableWidth: number): boolean =>
  widthOf(columnsAt(table, shown, sizePx, head, tableWidth), sizePx) <= tableWidth;
