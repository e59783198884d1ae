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

/**
 * Parts the rows into pulls by a column that keeps one text over each block of rows and never comes back to it (an
 * engine's name, a run's), or by a numbered column called run, pull or test. Without one the file is one pull.
 */
export function groupRows(read: RowsRead, names: readonly string[]): RowGroup[] {
  const whole: RowGroup[] = read.rowCount === 0 ? [] : [{ name: '', fromRow: 0, toRow: read.rowCount - 1 }];
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
