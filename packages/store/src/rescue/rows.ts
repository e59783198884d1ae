import type { Pages } from './pages.ts';
import { freePages, isTableLeaf, leavesOf, recordsOf, type StoredRecord } from './records.ts';
import { fits, type TableShape } from './tables.ts';

/** A record that was found, and how sure it is. */
export interface FoundRecord extends StoredRecord {
  table: TableShape;
  /** Found on a page that nothing leads to any more: it may be of the past. */
  isStray: boolean;
}

/**
 * Every record that can still be read: those that are reached through the schema and the tables' own trees first, then
 * those on pages to which nothing leads any more, told by their shape. So a lost page takes with it what is on it, and
 * not what hangs below it.
 */
export function* foundRecords(
  pages: Pages,
  shapes: readonly TableShape[],
): Generator<FoundRecord, { unreadable: number }> {
  const reached = new Set(leavesOf(pages, 1));
  let unreadable = 0;
  for (const shape of shapes) {
    const root = rootOf(pages, shape.name);
    if (root === null) continue;
    for (const leaf of leavesOf(pages, root)) {
      if (reached.has(leaf)) continue;
      const read = recordsOf(pages, leaf);
      const own = read.records.filter(({ values }) => fits(shape, values));
      // Through a damaged pointer a page of another table may be reached: it is looked at again as a stray one.
      if (own.length === 0 && read.records.length > 0) continue;
      reached.add(leaf);
      unreadable += read.unreadable + read.records.length - own.length;
      for (const record of own) yield { ...record, table: shape, isStray: false };
    }
  }
  const free = freePages(pages) ?? new Set<number>();
  for (let number = 1; number <= pages.count; number++) {
    if (reached.has(number) || free.has(number) || !isTableLeaf(pages, number)) continue;
    const read = recordsOf(pages, number);
    const table = ownerOf(read.records, shapes);
    if (table === null) continue;
    unreadable += read.unreadable;
    for (const record of read.records) {
      if (fits(table, record.values)) yield { ...record, table, isStray: true };
      else unreadable += 1;
    }
  }
  return { unreadable };
}

/** The last number each table gave, by SQLite's own table of them: more than what is there now were rows that are lost. */
export function lastNumbers(pages: Pages): Map<string, number> {
  const root = rootOf(pages, 'sqlite_sequence');
  const records =
    root === null ? [] : leavesOf(pages, root).flatMap((leaf) => recordsOf(pages, leaf).records);
  return new Map(
    records.flatMap(({ values: [table, last] }) =>
      typeof table === 'string' && typeof last === 'number' ? [[table, last]] : [],
    ),
  );
}

/** The root page of a table by the schema's own table; `null`: that line is lost. */
function rootOf(pages: Pages, table: string): number | null {
  for (const leaf of leavesOf(pages, 1)) {
    for (const { values } of recordsOf(pages, leaf).records) {
      const [type, name, , root] = values;
      if (type === 'table' && name === table && typeof root === 'number') return root;
    }
  }
  return null;
}

/** The one table that most of a page's records fit; `null`: none, or two fit alike. */
function ownerOf(records: readonly StoredRecord[], shapes: readonly TableShape[]): TableShape | null {
  const counted = shapes
    .map((shape) => ({ shape, fitting: records.filter(({ values }) => fits(shape, values)).length }))
    .filter(({ fitting }) => fitting > 0)
    .sort((one, other) => other.fitting - one.fitting || strictness(other.shape) - strictness(one.shape));
  return counted[0]?.shape ?? null;
}

/** A shape that asks more is the likelier one where two fit: a layout's JSON is also a session's text. */
const strictness = ({ columns }: TableShape): number =>
  columns.filter(({ isJson, oneOf }) => isJson || oneOf !== null).length;
