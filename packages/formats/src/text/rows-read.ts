import type { ColumnKind } from './column-kinds.ts';
import type { TextRuns } from './column-store.ts';

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
  /** The file holds more than can be kept. */
  tooLarge: boolean;
}
