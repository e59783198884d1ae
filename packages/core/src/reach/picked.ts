/** Which size of the lists the drive has; `null` where a rung leaves it as it is. */
export interface DriveChoice {
  by: 'blowerPulley' | 'crankPulley' | 'stepUp';
  /** Turns of the impeller for one of the engine come of it. Inside unit: m, or a ratio. */
  size: number;
}

/** What a rung is made of, by places in the lists of the input; `null`: as it is now. */
export interface Picked {
  build: number;
  drive: DriveChoice | null;
  cooler: number | null;
  fuel: number | null;
  breathing: number[];
  speedLimit: number | null;
}

/** What follows of itself: the smallest of each list that serves; `null`: what is there does. */
export interface Following {
  injectors: number | null;
  pump: number | null;
  beltRibs: number | null;
}

export const NOTHING_FOLLOWS: Following = { injectors: null, pump: null, beltRibs: null };

/** How many changes somebody chose; what follows of itself does not count. */
export const changesOf = (picked: Picked, isPresentBuild: boolean): number =>
  (isPresentBuild ? 0 : 1) +
  picked.breathing.length +
  [picked.drive, picked.cooler, picked.fuel, picked.speedLimit].filter((one) => one !== null).length;
