/** A stretch of rows, both included. */
export interface RowRun {
  fromRow: number;
  toRow: number;
}

/** 1 where a figure holds to `test`, else 0: the mask of a long series, for `runsOf`. */
export function maskOf(series: Float64Array, test: (value: number) => boolean): Uint8Array {
  const mask = new Uint8Array(series.length);
  for (let row = 0; row < series.length; row++) if (test(series[row]!)) mask[row] = 1;
  return mask;
}

/** Stretches where `mask` holds, bridging interruptions of at most `bridge` rows. */
export function runsOf(mask: ArrayLike<boolean | number>, bridge = 0): RowRun[] {
  const runs: RowRun[] = [];
  for (let row = 0; row < mask.length; row++) {
    if (!mask[row]) continue;
    const last = runs.at(-1);
    if (last !== undefined && row - last.toRow - 1 <= bridge) last.toRow = row;
    else runs.push({ fromRow: row, toRow: row });
  }
  return runs;
}
