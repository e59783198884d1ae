import type { ColumnKind } from './column-kinds.ts';
import type { TextRuns } from './text-runs.ts';

/** The data rows of a file, one typed array a column. */
export interface RowsRead {
  columns: {
    kind: ColumnKind;
    values: Float64Array;
    count: number;
    missing: number;
    low: number;
    high: number;
    runs: TextRuns | null;
  }[];
  rowCount: number;
  preview: string[][];
  /** 1-based line of each data row. */
  lineOfRow: Uint32Array;
  /** Rows before which the header stands once more, with the words of the line above it ('' none). */
  newStarts: { row: number; words: string }[];
}
