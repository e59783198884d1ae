import type { ShownTable } from '@pullbook/views';
import { isFigureColumn } from './figure-column.ts';

/** `Power, hp`; a speed that a row is of is written with its unit as a figure: `3,000 rpm`. */
export function rowName({ name, unit }: Pick<ShownTable['rows'][number], 'name' | 'unit'>): string {
  if (unit === '') return name;
  return isFigureColumn([name]) ? `${name}\u00a0${unit}` : `${name}, ${unit}`;
}
