/**
 * `number`: in the column's unit. `date`: ISO 8601, as it was written down. `text`: anything else.
 */
export type OutKind = 'number' | 'text' | 'date';

/** A column of a table for other programs. */
export interface OutColumn {
  /** Unique in its table, letters and digits, the unit last: `bPowerKw`. */
  name: string;
  /** For people, without the unit: `B base cam, power`. */
  title: string;
  /** `kW`; '' where there is none. */
  unit: string;
  /** The unit in the QUDT vocabulary (from memory); `null`: none that fits. */
  qudt: string | null;
  kind: OutKind;
}

/** `null`: unknown, or no figure. Numbers are finite. */
export type OutCell = number | string | null;

/** A table for other programs: typed cells in full precision, one row a thing, nothing that is computed on opening. */
export interface OutTable {
  /** `Speeds` */
  title: string;
  columns: OutColumn[];
  rows: OutCell[][];
}
