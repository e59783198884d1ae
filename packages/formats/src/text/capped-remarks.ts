import { type Remark, type RemarkLevel, remark } from '@pullbook/core/remark';

/** Remarks of one code that are told in full; the rest become one line with their number. */
const TOLD_IN_FULL = 5;

/** Collects remarks, and keeps a file with ten thousand bad cells from making ten thousand remarks. */
export class CappedRemarks {
  private readonly told: Remark[] = [];
  private readonly counts = new Map<string, { level: RemarkLevel; total: number }>();

  /** `message` is a function so that the words of a remark that is only counted are never built. */
  add(
    level: RemarkLevel,
    code: string,
    message: string | (() => string),
    place: { line?: number; column?: number } = {},
  ): void {
    const entry = this.counts.get(code) ?? { level, total: 0 };
    entry.total += 1;
    this.counts.set(code, entry);
    if (entry.total > TOLD_IN_FULL) return;
    this.told.push(remark(level, code, typeof message === 'string' ? message : message(), place));
  }

  /** What was told, and for each capped code `and 312 more like it`. */
  list(): Remark[] {
    const remarks = [...this.told];
    for (const [code, { level, total }] of this.counts) {
      if (total > TOLD_IN_FULL) {
        remarks.push(remark(level, code, `… and ${total - TOLD_IN_FULL} more like it (${code}).`));
      }
    }
    return remarks;
  }
}
