import type { Remark, RemarkLevel } from '@pullbook/core/remark';
import type { ShownRemark } from '@pullbook/views';

/** A remark in the command line's JSON. `line` and `column` are 1-based; `null` where there is none. */
export interface EdgeRemark {
  line: number | null;
  column: number | null;
  message: string;
  level: RemarkLevel;
  code: string;
  /** Name of the file it is about; `null`: none. */
  file: string | null;
}

/** Remarks for the JSON of the command line, with the file they came from. */
export function edgeRemarks(remarks: readonly Remark[], file: string | null = null): EdgeRemark[] {
  return remarks.map((one) => ({
    line: one.line ?? null,
    column: one.column ?? null,
    message: one.message,
    level: one.level,
    code: one.code,
    file,
  }));
}

/** Remarks for the screens. */
export function shownRemarks(remarks: readonly Remark[]): ShownRemark[] {
  return remarks.map((one) => ({
    level: one.level,
    text: one.message,
    ...(one.line === undefined ? {} : { line: one.line }),
    ...(one.column === undefined ? {} : { column: one.column }),
  }));
}
