import type { OutColumn } from './model.ts';
import type { OutUnit } from './out-unit.ts';

export const textColumn = (name: string, title: string): OutColumn => ({
  name,
  title,
  unit: '',
  qudt: null,
  kind: 'text',
});

export const dateColumn = (name: string, title: string): OutColumn => ({
  ...textColumn(name, title),
  kind: 'date',
});

/** `name` without its unit, which is put last. */
export const numberColumn = (name: string, title: string, unit: OutUnit): OutColumn => ({
  name: `${name}${unit.suffix}`,
  title,
  unit: unit.name,
  qudt: unit.qudt,
  kind: 'number',
});

/** Columns with names that are unique: a second one of a name is `…_2`. */
export function uniqueNames(columns: readonly OutColumn[]): OutColumn[] {
  const taken = new Set<string>();
  return columns.map((column) => {
    let name = column.name;
    for (let count = 2; taken.has(name); count++) name = `${column.name}_${count}`;
    taken.add(name);
    return { ...column, name };
  });
}

/** The key of a combination as the beginning of a name: `B` is `b`. */
export const keyName = (key: string): string => key.toLowerCase().replace(/[^a-z0-9]/g, '_');
