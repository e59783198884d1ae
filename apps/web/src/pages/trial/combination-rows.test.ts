import { expect, test } from 'vitest';
import { combinationsDiffer, movedUp, rowsOf, takenApartOf, withBlankRow } from './combination-rows.ts';

const combination = (key: string, id: string) => ({
  key,
  id,
  shortName: `${id} for short`,
  name: id,
  combination: 0,
  counted: 1,
  takenApart: null,
});
const page = {
  combinations: [combination('A', 'base'), combination('B', 'cam'), combination('C', 'heads')],
};
const idsOf = (rows: { combinationId: string }[]) => rows.map((row) => row.combinationId);

test('an untouched trial differs in nothing', () => {
  expect(combinationsDiffer(page, rowsOf(page))).toBe(false);
});

test('moving the last one up twice makes it the baseline; the others keep their order', () => {
  const once = movedUp(rowsOf(page), 2);
  expect(idsOf(once)).toEqual(['base', 'heads', 'cam']);
  const twice = movedUp(once, 1);
  expect(idsOf(twice)).toEqual(['heads', 'base', 'cam']);
  expect(idsOf(movedUp(twice, 0))).toEqual(['heads', 'base', 'cam']);
  expect(combinationsDiffer(page, twice)).toBe(true);
});

test('another name is a difference, a space behind it is none', () => {
  const rows = rowsOf(page);
  expect(combinationsDiffer(page, rows.with(0, { ...rows[0]!, shortName: 'base for short ' }))).toBe(false);
  expect(combinationsDiffer(page, rows.with(0, { ...rows[0]!, shortName: 'stock' }))).toBe(true);
});

test('what is said of the engine is a difference, of the first it is none', () => {
  const rows = rowsOf(page);
  expect(combinationsDiffer(page, rows.with(1, { ...rows[1]!, takenApart: false }))).toBe(true);
  expect(combinationsDiffer(page, rows.with(0, { ...rows[0]!, takenApart: false }))).toBe(false);
  expect(takenApartOf(rows.with(2, { ...rows[2]!, takenApart: true }))).toEqual({ B: null, C: true });
});

test('a row keeps its own name when others leave and come', () => {
  const rows = withBlankRow(rowsOf(page).toSpliced(0, 1));
  expect(new Set(rows.map((row) => row.rowId)).size).toBe(3);
});
