import { writeSaid } from '@pullbook/core/quantity';
import type { Remark, RemarkLevel } from '@pullbook/core/remark';
import type { ShownRemark, ViewOptions } from '@pullbook/views';

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

/**
 * Remarks for the command line, with the file they came from. Their figures stand in SI, as its JSON has them, or in the
 * units a person chose.
 */
export function edgeRemarks(
  remarks: readonly Remark[],
  file: string | null = null,
  options: ViewOptions | null = null,
): EdgeRemark[] {
  return remarks.map((one) => ({
    line: one.line ?? null,
    column: one.column ?? null,
    message: wordsOf(one, options),
    level: one.level,
    code: one.code,
    file,
  }));
}

/** Remarks for the screens, their figures in the units shown; `null`: SI. */
export function shownRemarks(remarks: readonly Remark[], options: ViewOptions | null): ShownRemark[] {
  return remarks.map((one) => ({
    level: one.level,
    text: wordsOf(one, options),
    ...(one.line === undefined ? {} : { line: one.line }),
    ...(one.column === undefined ? {} : { column: one.column }),
  }));
}

/** The message of a remark with its figures in the units asked for; `null`: SI. */
export const wordsOf = ({ message, parts }: Remark, options: ViewOptions | null): string =>
  options === null ? message : writeSaid(message, parts, options);
