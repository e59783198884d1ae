import type { ReadColumn } from '../model.ts';

export type Guess = ReadColumn['guess'];
/** A column before its meaning is guessed. `isText`: its cells are words. */
export type UnguessedColumn = Omit<ReadColumn, 'guess'> & { isText: boolean };
