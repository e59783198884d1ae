/**
 * Rows that show a channel in so many columns of a screen, ascending: each column's first, lowest, highest and last, so
 * that no extreme is lost however long the recording. All rows where there are no more than that.
 *
 * @example rowsToDraw(channel.values, 0, 999_999, 800).length // at most 3,200
 */
export function rowsToDraw(
  values: ArrayLike<number>,
  fromRow: number,
  toRow: number,
  columns: number,
): number[] {
  const count = toRow - fromRow + 1;
  if (count <= 4 * columns) return Array.from({ length: Math.max(0, count) }, (_, row) => fromRow + row);
  const rows: number[] = [];
  for (let column = 0; column < columns; column += 1) {
    const first = fromRow + Math.floor((column * count) / columns);
    const last = fromRow + Math.floor(((column + 1) * count) / columns) - 1;
    let low = -1;
    let high = -1;
    for (let row = first; row <= last; row += 1) {
      const value = values[row]!;
      if (!Number.isFinite(value)) continue;
      if (low < 0 || value < values[low]!) low = row;
      if (high < 0 || value > values[high]!) high = row;
    }
    const kept = new Set([first, ...(low < 0 ? [] : [Math.min(low, high), Math.max(low, high)]), last]);
    rows.push(...kept);
  }
  return rows;
}
