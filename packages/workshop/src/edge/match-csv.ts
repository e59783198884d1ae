import type { MatchedReport } from './match-report.ts';

/** The points of matches as one table, a column a figure with its unit in the name; empty where there is none. */
export function csvOfMatches(matches: readonly Pick<MatchedReport, 'key' | 'name' | 'points'>[]): string {
  const columns = Object.keys(matches[0]?.points[0] ?? {});
  const rows = matches.flatMap(({ key, name, points }) =>
    points.map((point) => [key, name, ...columns.map((column) => point[column])].map(cell).join(',')),
  );
  return `${['key', 'name', ...columns].join(',')}\n${rows.map((row) => `${row}\n`).join('')}`;
}

export function cell(value: MatchedReport['points'][number][string] | undefined): string {
  const text = value === null || value === undefined ? '' : String(value);
  return /[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
