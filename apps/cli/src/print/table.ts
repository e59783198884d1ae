/**
 * Lines of a table whose columns stand under one another: text to the left, columns that hold only figures to the right.
 * The first row is the heading.
 */
export function table(rows: string[][], indent = ''): string[] {
  const columns = Math.max(0, ...rows.map((row) => row.length));
  const widths = Array.from({ length: columns }, (_, column) =>
    Math.max(...rows.map((row) => lengthOf(row[column] ?? ''))),
  );
  const right = widths.map((_, column) => rows.slice(1).every((row) => isFigure(row[column] ?? '')));
  return rows.map((row) => {
    const cells = widths.map((width, column) => {
      const cell = row[column] ?? '';
      const room = ' '.repeat(width - lengthOf(cell));
      return right[column] ? room + cell : cell + room;
    });
    return `${indent}${cells.join('  ')}`.trimEnd();
  });
}

const lengthOf = (text: string): number => [...text].length;

const isFigure = (text: string): boolean => text === '' || /^[+−–-]?[\d.,\s\u2009\u202f]*( ?%)?$/u.test(text);

/** `12 pulls`, `1 pull` */
export function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
