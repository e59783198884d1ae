import type { Origin } from '../quantity/index.ts';

/** Every origin a value of a sheet may have, as written. */
export const ORIGINS: readonly Origin[] = [
  'measured',
  'data sheet',
  'read off a picture',
  'remembered',
  'assumed',
  'computed',
  'rule of thumb',
  'not stated',
];
