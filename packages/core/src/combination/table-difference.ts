import { fromInside, unitFor } from '../quantity/index.ts';
import type { SheetTable, SheetValue } from './model.ts';

/** Figures told with three digits differ by less than this share when they are the same. */
const SAME_FIGURE = 1e-6;

/**
 * Where two known tables differ, in few words for the later one: `8 points at 28 inH2O, differs at 6 to 12 mm`. `null`: they
 * are the same. `isSame` compares the lines beside the points.
 */
export function tableDifference(
  before: SheetTable,
  after: SheetTable,
  isSame: (left: SheetValue | null, right: SheetValue | null) => boolean,
): string | null {
  const parts = [pointsDifference(before, after), ...detailsThatDiffer(before, after, isSame)].filter(
    (part) => part !== null,
  );
  return parts.length === 0 ? null : parts.join(', ');
}

function pointsDifference(before: SheetTable, after: SheetTable): string | null {
  const [places, figures] = [before.columns[0]!.values, before.columns[1]!.values];
  const [otherPlaces, otherFigures] = [after.columns[0]!.values, after.columns[1]!.values];
  const samePlaces =
    places.length === otherPlaces.length &&
    places.every((place, index) => isClose(place, otherPlaces[index]!));
  if (!samePlaces) return 'at other points';
  const differing = [...figures.keys()].filter((index) => !isClose(figures[index]!, otherFigures[index]!));
  if (differing.length === 0) return null;
  const [first, last] = [placeText(after, differing[0]!), placeText(after, differing.at(-1)!)];
  const unit = after.columns[0]!.enteredUnit;
  return first === last ? `differs at ${first} ${unit}` : `differs at ${first} to ${last} ${unit}`;
}

function detailsThatDiffer(
  before: SheetTable,
  after: SheetTable,
  isSame: (left: SheetValue | null, right: SheetValue | null) => boolean,
): string[] {
  const names = new Set([...Object.keys(before.details), ...Object.keys(after.details)]);
  return [...names].flatMap((name) => {
    const [left, right] = [before.details[name] ?? null, after.details[name] ?? null];
    if (name === 'notes' || isSame(left, right)) return [];
    return [`${name} ${left?.text ?? 'not told'} → ${right?.text ?? 'not told'}`];
  });
}

const isClose = (left: number, right: number) =>
  Math.abs(left - right) <= SAME_FIGURE * Math.max(Math.abs(left), Math.abs(right), 1e-9);

/** A place in the unit in which it was entered. */
function placeText({ columns }: SheetTable, index: number): string {
  const { values, kind, enteredUnit } = columns[0]!;
  const unit = unitFor(enteredUnit, kind);
  return String(Number((unit === null ? values[index]! : fromInside(values[index]!, unit)).toPrecision(6)));
}
