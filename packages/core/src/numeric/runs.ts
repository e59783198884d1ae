/** A stretch of rows, both included. */
export interface RowRun {
  fromRow: number;
  toRow: number;
}

/** Stretches where `mask` holds, bridging interruptions of at most `bridge` rows. */
export function runsOf(mask: ArrayLike<boolean>, bridge = 0): RowRun[] {
  const runs: RowRun[] = [];
  for (let row = 0; row < mask.length; row++) {
    if (!mask[row]) continue;
    const last = runs.at(-1);
    if (last !== undefined && row - last.toRow - 1 <= bridge) last.toRow = row;
    else runs.push({ fromRow: row, toRow: row });
  }
  return runs;
}
