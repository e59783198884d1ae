import type { CellText } from './cell-text.ts';

/** Distinct runs of one text kept per column; more of them are no blocks of rows. */
const MOST_RUNS = 200;

/** Stretches of equal text down a column, for finding blocks of rows that are pulls of their own. */
export class TextRuns {
  readonly runs: { text: string; fromRow: number }[] = [];
  tooMany = false;
  /** Bytes of the cell before, where it came as bytes. */
  private before: Uint8Array | null = null;

  push(text: string, row: number): void {
    this.before = null;
    if (this.tooMany || this.runs.at(-1)?.text === text) return;
    this.runs.push({ text, fromRow: row });
    if (this.runs.length > MOST_RUNS) this.tooMany = true;
  }

  /** The same of a cell as bytes: most are those of the row before, and need not become text. */
  pushBytes(bytes: Uint8Array, from: number, to: number, cells: CellText, row: number): void {
    if (this.tooMany || this.isAsBefore(bytes, from, to)) return;
    this.push(cells.of(bytes, from, to).trim(), row);
    this.before = bytes.slice(from, to);
  }

  private isAsBefore(bytes: Uint8Array, from: number, to: number): boolean {
    const { before } = this;
    if (before === null || before.length !== to - from) return false;
    for (let at = 0; at < before.length; at++) if (before[at] !== bytes[from + at]) return false;
    return true;
  }
}
