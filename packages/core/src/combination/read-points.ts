import { parseNumber, toInside, type Unit, unitFor, unitsOfKind } from '../quantity/index.ts';
import { accepted, type Remark, type Result, refused, remark } from '../remark/index.ts';
import type { SheetTable } from './model.ts';
import type { TableColumn, TableShape } from './table-shapes.ts';

/** More points than any degree wheel gives; more is another file given by mistake. */
const MOST_POINTS = 2000;

/**
 * Points as a person types, pastes or exports them: a heading that names both columns with their units, then one point a
 * line. Parted by tabs, semicolons, commas or spaces; a decimal comma is read where no comma parts. The first column must
 * rise. `place` names it in messages.
 *
 * @example readPoints('lift mm, flow L/s\n2, 28\n4, 56', FLOW_SHEET, 'heads.flowIntake.points')
 */
export function readPoints(text: string, shape: TableShape, place: string): Result<SheetTable['columns']> {
  const lines = text.split(/\r?\n/).map((line) => line.trim());
  const rows = lines.flatMap((line, index) => (line === '' ? [] : [{ line, at: index + 1 }]));
  const [heading, ...points] = rows;
  const refusal = (code: string, message: string) =>
    refused(remark('refusal', code, `${place}: ${message} ${sample(shape)}`));
  if (!heading || points.length < 2)
    return refusal('too-few-points', 'a table has a heading and two points or more.');
  if (points.length > MOST_POINTS)
    return refusal('too-many-points', `${points.length} points; a table has at most ${MOST_POINTS}.`);
  const delimiter = delimiterOf(heading.line, points[0]!.line);
  const cells = cellsOf(heading.line, delimiter);
  const found = shape.columns.map((column) => headingOf(cells, column));
  for (const [index, column] of shape.columns.entries()) {
    if (found[index]) continue;
    const units = unitsOfKind(column.kind).map(({ name }) => name);
    return refusal(
      'points-heading',
      `the heading "${heading.line}" does not name ${column.word} with a unit (accepted: ${units.join(', ')}).`,
    );
  }
  const columns = shape.columns.map(({ field, kind }, index): SheetTable['columns'][number] => ({
    field,
    kind,
    enteredUnit: found[index]!.unit.name,
    values: [],
  }));
  for (const { line, at } of points) {
    const parts = pointCells(line, delimiter, cells.length);
    for (const [index, column] of shape.columns.entries()) {
      const part = parts[found[index]!.cell] ?? '';
      const number = parseNumber(part, 'either');
      if (number === null || parts.length !== cells.length)
        return refusal(
          'point-not-read',
          `line ${at}, "${line}", is not a point: ${cells.length} numbers are due.`,
        );
      const value = toInside(number, found[index]!.unit);
      if (value < column.allowed[0] || value > column.allowed[1])
        return refusal(
          'point-impossible',
          `line ${at}, "${line}": ${column.word} of ${part} ${found[index]!.unit.name} cannot be. Check the unit in the heading.`,
        );
      columns[index]!.values.push(value);
    }
    const rising = columns[0]!.values;
    if (rising.length > 1 && rising.at(-1)! <= rising.at(-2)!)
      return refusal(
        'points-not-rising',
        `line ${at}, "${line}": ${shape.columns[0].word} does not rise. Write each once, from low to high.`,
      );
  }
  return accepted(columns, leftOut(cells, found, place));
}

interface FoundHeading {
  cell: number;
  unit: Unit;
}

/** `lift mm`, `Valve lift (in)`, `Flow [cfm]`: the column's word, and a unit of its kind at the end. */
function headingOf(cells: readonly string[], { word, kind }: TableColumn): FoundHeading | null {
  for (const [cell, heading] of cells.entries()) {
    const lower = heading.toLowerCase();
    if (!lower.includes(word)) continue;
    const after = heading.slice(lower.indexOf(word) + word.length);
    const unit = unitFor(after.replace(/^[\s:/_-]+|[[\]]/g, ''), kind);
    if (unit) return { cell, unit };
  }
  return null;
}

/** The first sign of tab, semicolon and comma that stands in the heading; else spaces. */
function delimiterOf(heading: string, firstPoint: string): string {
  const sign = ['\t', ';', ','].find((one) => heading.includes(one) && firstPoint.includes(one));
  return sign ?? ' ';
}

const cellsOf = (line: string, delimiter: string): string[] =>
  delimiter === ' '
    ? line.split(/\s{2,}/)
    : line.split(delimiter).map((cell) => cell.trim().replace(/^"|"$/g, ''));

/** In a point single spaces part too; in a heading they stand inside a column's name. */
function pointCells(line: string, delimiter: string, count: number): string[] {
  if (delimiter === ' ') return line.split(/\s+/);
  const cells = cellsOf(line, delimiter);
  return cells.length === count + 1 && cells.at(-1) === '' ? cells.slice(0, -1) : cells;
}

function leftOut(cells: readonly string[], found: readonly (FoundHeading | null)[], place: string): Remark[] {
  const others = cells.filter((_, index) => !found.some((one) => one?.cell === index));
  if (others.length === 0) return [];
  const message = `${place}: ${others.map((name) => `"${name}"`).join(', ')} is kept in the text and used in no figure.`;
  return [remark('note', 'column-not-used', message)];
}

const sample = ({ example }: TableShape): string => {
  const [heading, first, second] = example.split('\n');
  return `Write for example "${heading}" and under it "${first}", "${second}".`;
};
