import type { CursorTable } from '@pullbook/views';

/** The numbers at one node in words, for who hears the cursor instead of seeing it. */
export function cursorText(table: CursorTable, node: number, xUnit: string): string {
  const rows = table.rows.map((row) => {
    const figures = table.columns.flatMap((column, index) => {
      const cell = row.cells[index]?.[node] ?? '';
      return cell === '' ? [] : [table.columns.length === 1 ? cell : `${column.key} ${cell}`];
    });
    return figures.length === 0 ? '' : `${row.name} ${figures.join(', ')} ${row.unit}`.trim();
  });
  const gains = (table.gains ?? []).map(({ name, unit, cells }) =>
    cells[node] ? `${name}: ${cells[node]} ${unit}` : '',
  );
  return [`${table.at[node]} ${xUnit}`, ...rows, ...gains].filter((row) => row !== '').join('; ');
}
