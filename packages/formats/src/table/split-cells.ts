/** A line of a table in its cells, and where it stands in its file (from 1); `null`: it stands in none. */
export interface TableRow {
  cells: string[];
  line: number | null;
}

/** The first of tab, semicolon and comma that stands in the heading; else runs of spaces. */
export function delimiterOf(heading: string): string {
  return ['\t', ';', ','].find((sign) => outsideBrackets(heading).includes(sign)) ?? ' ';
}

/** `flow [kg/s], speed` without what stands in brackets or quotes, where a sign parts nothing. */
const outsideBrackets = (text: string): string => text.replace(/\[[^\]]*\]|\([^)]*\)|"[^"]*"/g, '');

/**
 * A line in its cells, by RFC 4180 where they are quoted. Of a table parted by spaces, two or more part the cells of a
 * heading, for single ones stand inside a name, and any number parts those of a row.
 *
 * @example splitCells('0.2; 1.4;"a; b"', ';') // ['0.2', '1.4', 'a; b']
 */
export function splitCells(text: string, delimiter: string, isHeading = false): string[] {
  if (delimiter === ' ') return text.trim().split(isHeading ? /\s{2,}/ : /\s+/);
  const cells: string[] = [];
  for (let at = 0; at <= text.length; ) {
    const quoted = /^\s*"((?:[^"]|"")*)"\s*/.exec(text.slice(at));
    const after = quoted ? at + quoted[0].length : at;
    if (quoted && (after === text.length || text.startsWith(delimiter, after))) {
      cells.push(quoted[1]!.replaceAll('""', '"'));
      at = after + 1;
      continue;
    }
    const next = text.indexOf(delimiter, at);
    const end = next < 0 ? text.length : next;
    cells.push(text.slice(at, end).trim());
    at = end + 1;
  }
  return cells;
}
