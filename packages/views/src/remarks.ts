import { writeSaid } from '@pullbook/core/quantity';
import type { Remark } from '@pullbook/core/remark';
import type { ShownRemark, ViewOptions } from './model.ts';

/** Remarks for a page, their figures in its units: each said once, refusals before cautions before notes. */
export function shownRemarks(remarks: readonly Remark[], options: ViewOptions): ShownRemark[] {
  const order = ['refusal', 'caution', 'note'];
  const seen = new Set<string>();
  const once = remarks.filter(({ message, line }) => {
    const mark = `${line ?? ''} ${message}`;
    if (seen.has(mark)) return false;
    seen.add(mark);
    return true;
  });
  return once
    .toSorted((one, other) => order.indexOf(one.level) - order.indexOf(other.level))
    .map(({ level, message, parts, line, column }) => ({
      level,
      text: writeSaid(message, parts, options),
      ...(line === undefined ? {} : { line }),
      ...(column === undefined ? {} : { column }),
    }));
}
