import type { ColumnShape } from '../table/headed-table.ts';
import { columnsOf, ENGINE_SPEED } from './curve-shape.ts';
import type { WrittenOverSpeed } from './model.ts';
import type { Shape } from './shape.ts';
import { table } from './table-shape.ts';

const factor = (field: string): ColumnShape => ({
  field,
  words: [field],
  kinds: ['ratio'],
  example: field,
  isNeeded: false,
  mayBeEmpty: true,
  allowed: [0.2, 5],
});

const COLUMNS: readonly ColumnShape[] = [
  ENGINE_SPEED,
  factor('head'),
  factor('air'),
  factor('work'),
  factor('fuel'),
];

const written = table(
  COLUMNS,
  'Factors over engine speed, 1 where nothing is: on the head of the compressor, the air swallowed, the work of the air, and that work by another fuel.',
);

/** What a fit, another cam or another fuel does at each engine speed. */
export const overSpeed: Shape<WrittenOverSpeed> = {
  get schema() {
    return written.schema;
  },
  read: (value, path, reading) => {
    const rows = written.read(value, path, reading);
    if (rows === undefined) return undefined;
    const column = columnsOf(rows, path, reading);
    return {
      engineSpeedRpm: column('engineSpeed')!,
      head: column('head'),
      air: column('air'),
      work: column('work'),
      fuel: column('fuel'),
    };
  },
};
