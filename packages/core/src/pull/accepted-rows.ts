import type { AcceptanceWindow } from './model.ts';

/** Rows of the window that no cut takes out, ascending. */
export function acceptedRows(window: AcceptanceWindow): number[] {
  const rows: number[] = [];
  for (let row = window.fromRow; row <= window.toRow; row++)
    if (!window.cuts.some((cut) => row >= cut.fromRow && row <= cut.toRow)) rows.push(row);
  return rows;
}
