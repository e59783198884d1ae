import type { RowGroup } from '../model.ts';
import type { ColumnKind } from './column-kinds.ts';
import type { RowsRead } from './rows-read.ts';

const LEAST_ROWS_OF_A_PULL = 2;
const MOST_PULLS_OF_A_FILE = 100;
const NUMBERS_PULLS =
  /^(run|pull|test|sweep|series|lauf|messung|versuch|essai|prueba)[\s_]?(no|nr|num|number|nummer|id|#)?\.?$/i;

/** Whether a column can part the rows into pulls: words, or numbers under a name such as `run`. */
export function mayPartPulls(kind: ColumnKind, name: string): boolean {
  return kind === 'text' || (kind === 'number' && NUMBERS_PULLS.test(name.trim()));
}

/** Words above a repeated header longer than this are a sentence, not a name. */
const LONGEST_NAME = 60;

/**
 * Parts the rows into pulls: where the header stands again; else by a column that keeps one text over each block of rows and never comes back to it (an
 * engine's name, a run's), or by a numbered column called run, pull or test. Without either the file is one pull.
 */
export function groupRows(read: RowsRead, names: readonly string[], wordsAbove: string): RowGroup[] {
  const whole: RowGroup[] = read.rowCount === 0 ? [] : [{ name: '', fromRow: 0, toRow: read.rowCount - 1 }];
  const underHeaders = groupsUnderHeaders(read, wordsAbove);
  if (underHeaders.length > 1) return underHeaders;
  for (const [index, column] of read.columns.entries()) {
    const name = (names[index] ?? '').trim();
    const numbered = column.kind === 'number';
    const runs = column.runs?.runs ?? [];
    if (runs.length < 2 || runs.length > MOST_PULLS_OF_A_FILE) continue;
    if (new Set(runs.map(({ text }) => text)).size < runs.length) continue;
    const groups = runs.map(({ text, fromRow }, at) => ({
      name: numbered ? `${name} ${text}` : text,
      fromRow,
      toRow: (runs[at + 1]?.fromRow ?? read.rowCount) - 1,
    }));
    const longEnough = groups.every(({ fromRow, toRow }) => toRow - fromRow + 1 >= LEAST_ROWS_OF_A_PULL);
    if (longEnough) return groups;
  }
  return whole;
}

/** The rows under each header, named by the line above it where there is one, else by their number. */
function groupsUnderHeaders(read: RowsRead, wordsAbove: string): RowGroup[] {
  const starts = [{ row: 0, words: wordsAbove }, ...read.newStarts].filter(({ row }) => row < read.rowCount);
  if (starts.length > MOST_PULLS_OF_A_FILE) return [];
  const isNamed = starts.every(({ words }) => words !== '' && words.length <= LONGEST_NAME);
  const named = isNamed && new Set(starts.map(({ words }) => words)).size === starts.length;
  return starts.map(({ row, words }, at) => ({
    name: named ? words : `Pull ${at + 1}`,
    fromRow: row,
    toRow: (starts[at + 1]?.row ?? read.rowCount) - 1,
  }));
}
