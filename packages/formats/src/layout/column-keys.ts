import type { ReadColumn } from '../model.ts';

/** What a column is known again by: its name and unit as written, whatever their case and spacing, and whether it is a clock. */
export type NamedColumn = Pick<ReadColumn, 'name' | 'unitText' | 'holdsClock'>;

/**
 * A key a column; a column of the same name and unit as one before it is told apart by its place among them.
 *
 * @example columnKeys([{ name: 'Torque', unitText: 'N·m', holdsClock: false }]) // ['torque|n·m']
 */
export function columnKeys(columns: readonly NamedColumn[]): string[] {
  const met = new Map<string, number>();
  return columns.map(({ name, unitText, holdsClock }) => {
    const key = `${plain(name)}|${plain(unitText)}${holdsClock ? '|clock' : ''}`;
    const before = met.get(key) ?? 0;
    met.set(key, before + 1);
    return before === 0 ? key : `${key}|${before + 1}`;
  });
}

/** Whether every column has a name and unit of its own, so that it is known again wherever it stands. */
export const allApart = (keys: readonly string[]): boolean =>
  keys.every((key) => !/\|\d+$/.test(key)) && new Set(keys).size === keys.length;

const plain = (text: string): string =>
  text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[\s_]+/g, ' ')
    .replace(/\|/g, '/')
    .trim();
