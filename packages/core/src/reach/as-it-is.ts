import type { Picked } from './picked.ts';

/** The engine as it is: nothing picked. */
export const AS_IT_IS: Picked = {
  build: 0,
  drive: null,
  cooler: null,
  fuel: null,
  breathing: [],
  speedLimit: null,
};
