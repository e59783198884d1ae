/** Distinct runs of one text kept per column; more of them are no blocks of rows. */
const MOST_RUNS = 200;

/** The numbers of one column while a file is read; grows by doubling. */
export class ColumnStore {
  count = 0;
  missing = 0;
  low = Number.POSITIVE_INFINITY;
  high = Number.NEGATIVE_INFINITY;
  private values = new Float64Array(64);
  private length = 0;

  /** NaN stands for a missing reading. */
  push(value: number): void {
    if (this.length === this.values.length) {
      const wider = new Float64Array(2 * this.length);
      wider.set(this.values);
      this.values = wider;
    }
    this.values[this.length++] = value;
    if (Number.isNaN(value)) {
      this.missing += 1;
      return;
    }
    this.count += 1;
    if (value < this.low) this.low = value;
    if (value > this.high) this.high = value;
  }

  /** The values read, in an array of their own length. */
  finish(): Float64Array {
    return this.values.slice(0, this.length);
  }
}

/** Stretches of equal text down a column, for finding blocks of rows that are pulls of their own. */
export class TextRuns {
  readonly runs: { text: string; fromRow: number }[] = [];
  tooMany = false;

  push(text: string, row: number): void {
    if (this.tooMany || this.runs.at(-1)?.text === text) return;
    this.runs.push({ text, fromRow: row });
    if (this.runs.length > MOST_RUNS) this.tooMany = true;
  }
}
