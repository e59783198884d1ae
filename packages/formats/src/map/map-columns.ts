import type { ColumnShape } from '../table/headed-table.ts';

/** Columns of a table of a compressor map, total to total, corrected to its reference. */
export const MAP_COLUMNS: readonly ColumnShape[] = [
  {
    field: 'flow',
    words: ['flow', 'corrected flow', 'mass flow', 'corrected mass flow', 'air flow'],
    kinds: ['massFlow', 'volumeFlow'],
    example: 'flow [kg/s]',
    isNeeded: true,
    allowed: [0, 50],
  },
  {
    field: 'pressureRatio',
    words: ['pressure ratio', 'total pressure ratio', 'pr'],
    kinds: ['ratio'],
    example: 'pressure ratio',
    isNeeded: true,
    allowed: [0.5, 10],
  },
  {
    field: 'speed',
    words: ['speed', 'corrected speed', 'impeller speed', 'tip speed', 'wheel speed'],
    kinds: ['engineSpeed', 'speed', 'ratio'],
    example: 'speed [rpm]',
    isNeeded: true,
    allowed: [1, 500_000],
  },
  {
    field: 'efficiency',
    words: ['efficiency', 'adiabatic efficiency', 'isentropic efficiency', 'eff', 'eta'],
    kinds: ['ratio'],
    example: 'efficiency [%]',
    isNeeded: false,
    mayBeEmpty: true,
    // Per cent or share is looked at apart, so that a mixture is told as one.
    allowed: [0, 100],
  },
];
