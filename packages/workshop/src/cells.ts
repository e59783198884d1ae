import { randomUUID } from 'node:crypto';
import { type Cell, cellNamed } from '@pullbook/core/pull';
import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import type { ViewOptions } from '@pullbook/views';
import { type CellReport, type CellsReport, cellReport } from './edge/cell-report.ts';
import { type CellText, cellFromText } from './edge/cell-text.ts';
import { todayHere } from './edge/day-text.ts';
import { findOne } from './find-one.ts';
import { onLatest } from './on-latest.ts';

/** The described cells, and those that pulls only name. */
export async function cellsReport(book: Book, view: ViewOptions): Promise<CellsReport> {
  const cells = await book.cells();
  const named = new Map<string, { name: string; pulls: number }>();
  for (const { name: written, pulls } of await book.pullCells()) {
    const name = written.trim();
    if (name === '') continue;
    const known = named.get(name.toLowerCase());
    named.set(name.toLowerCase(), { name: known?.name ?? name, pulls: (known?.pulls ?? 0) + pulls });
  }
  const pullsOf = (cell: Cell) => named.get(cell.name.trim().toLowerCase())?.pulls ?? 0;
  const reports: CellReport[] = [];
  for (const cell of cells) {
    const stamp = await book.stamp(`cell ${cell.id}`);
    reports.push(cellReport(cell, { pulls: pullsOf(cell), stamp }, todayHere(), view));
  }
  return {
    schemaVersion: 1,
    cells: reports,
    undescribed: [...named.values()].filter(({ name }) => cellNamed(cells, name) === null),
  };
}

/** One cell by id, beginning of an id, or name. */
export async function cellReportOf(
  book: Book,
  given: string,
  view: ViewOptions,
): Promise<Result<CellReport>> {
  const found = findOne(await book.cells(), given, 'cell');
  if (!found.ok) return found;
  const report = await cellsReport(book, view);
  return accepted(report.cells.find(({ id }) => id === found.value.id)!);
}

/** Describes a cell. Pulls that name it already are its pulls from then on. */
export async function addCell(book: Book, text: CellText): Promise<Result<{ id: string; name: string }>> {
  const said = cellFromText({ ...text, name: text.name ?? '' });
  if (!said.ok) return said;
  const taken = cellNamed(await book.cells(), said.value.name!);
  if (taken) return refused(nameTaken(taken.name));
  const cell: Cell = {
    id: randomUUID(),
    name: '',
    brake: '',
    altitude: null,
    momentOfInertia: null,
    notes: '',
    ...said.value,
    instruments: [],
  };
  await book.addCell(cell);
  return accepted({ id: cell.id, name: cell.name }, said.remarks);
}

/** Changes what was said of a cell; missing stays. Under another name its pulls follow. */
export async function changeCell(
  book: Book,
  given: string,
  text: CellText,
  reason: string,
  stamp?: string,
): Promise<Result<{ id: string; name: string }>> {
  const said = cellFromText(text);
  if (!said.ok) return said;
  if (Object.keys(said.value).length === 0) {
    return refused(remark('refusal', 'nothing-to-change', 'Nothing to change of the cell was given.'));
  }
  return onLatestCell(book, given, stamp, async (before, latest) => {
    const taken = said.value.name === undefined ? null : cellNamed(await book.cells(), said.value.name);
    if (taken && taken.id !== before.id) return refused(nameTaken(taken.name));
    const cell = { ...before, ...said.value };
    await book.changeCell(cell, reason.trim(), latest);
    return accepted({ id: cell.id, name: cell.name });
  });
}

/** Does a change to the cell of that id, beginning of an id, or name as it stands then; see `onLatest`. */
export async function onLatestCell<T>(
  book: Book,
  given: string,
  stamp: string | undefined,
  change: (cell: Cell, latest: string) => Promise<Result<T>>,
): Promise<Result<T>> {
  const found = findOne(await book.cells(), given, 'cell');
  if (!found.ok) return found;
  const { id } = found.value;
  return onLatest(book, `cell ${id}`, stamp, async (latest) => {
    const cell = (await book.cells()).find((one) => one.id === id);
    if (!cell) throw new Error(`Cell ${id} was found but is not there.`);
    return change(cell, latest);
  });
}

const nameTaken = (name: string) =>
  remark(
    'refusal',
    'cell-name',
    `There is a cell "${name}" already. Change that one, or give this one a name of its own.`,
  );
