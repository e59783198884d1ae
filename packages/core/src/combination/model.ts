import type { Origin, QuantityKind } from '../quantity/index.ts';

/** One physical engine. */
export interface Engine {
  id: string;
  /** The shop's own name for it. */
  name: string;
  /** Rebuilt or re-machined: a new revision. */
  buildRevision: string;
  notes: string;
  invented: boolean;
}

/** One line of a combination sheet. Text as entered is kept; what it means is beside it. */
export interface SheetValue {
  /** As entered: `96 mm`, `unknown`, `flat tappet`. */
  text: string;
  /** Inside unit of `kind`; `null`: unknown, or not a number. */
  value: number | null;
  /** `text` and `count` have no unit; a `table` has its figures in `table`. */
  kind: QuantityKind | 'text' | 'count' | 'table';
  origin: Origin;
  /** Of a field that is a table and known: its points. `text` is then a summary: `8 points at 28 inH2O`. */
  table?: SheetTable;
}

/** Points of a table with what they were taken with: a flow sheet, a lift curve. */
export interface SheetTable {
  /** As entered: a heading with units, then one point a line. */
  points: string;
  /** Figures in the inside unit of the column's kind, the first column rising. */
  columns: { field: string; kind: QuantityKind; enteredUnit: string; values: number[] }[];
  /** Lines beside the points, in the order written: test pressure, bore, bench. */
  details: Record<string, SheetValue>;
}

export type SectionId =
  | 'shortBlock'
  | 'heads'
  | 'cam'
  | 'intake'
  | 'exhaust'
  | 'fuelSystem'
  | 'fuel'
  | 'ignition'
  | 'supercharger'
  | 'drive'
  | 'cooler'
  | 'accessories';

/** The hardware as built, on one readable sheet. Sections and fields in the order they were written. */
export interface CombinationSheet {
  schemaVersion: 1;
  name: string;
  /** Fields by section; a section that is not there is not fitted or not known. */
  sections: Partial<Record<SectionId, Record<string, SheetValue>>>;
}

/** A combination in the book. Fixed once pulled: a change of hardware makes a new one. */
export interface Combination {
  id: string;
  engineId: string;
  name: string;
  sheet: CombinationSheet;
  /** 1, and one more at each amendment (better knowledge of the same hardware). */
  revision: number;
  /** Combination this one was made from; `null`: none. */
  madeFromId: string | null;
  /** Packages fitted. */
  packageIds: string[];
  /** ISO 8601 */
  createdAt: string;
  invented: boolean;
}

/** Parts that belong to one change by declaration: a supercharger with its drive, cooler and injectors. */
export interface Package {
  id: string;
  name: string;
  /** `section` or `section.field` that belong to it. */
  covers: string[];
  invented: boolean;
}

/** One line in which two combinations differ. */
export interface PartChange {
  section: SectionId;
  field: string;
  /** `Cam, duration at 1 mm, intake` */
  label: string;
  /** Text of each side; `null`: not on the sheet. */
  before: string | null;
  after: string | null;
  /** Name of the package it belongs to by declaration; `null`: none. */
  packageName: string | null;
}

/** What follows from a cam card; only on a sheet that has some of the card. */
export type CamFigureId =
  | 'eventDurationIntake'
  | 'eventDurationExhaust'
  | 'eventIntakeCentreline'
  | 'exhaustCentreline'
  | 'eventLobeSeparation'
  | 'advanceAsFitted'
  | 'overlap'
  | 'valveLiftIntake'
  | 'valveLiftExhaust';

/** Derived figures of a sheet, with what they were derived from. SI. */
export interface DerivedFigure {
  id:
    | 'displacement'
    | 'cylinderDisplacement'
    | 'compressionRatio'
    | 'meanPistonSpeed'
    | 'boreToStroke'
    | 'rodToStroke'
    | CamFigureId;
  label: string;
  value: number | null;
  kind: QuantityKind;
  /** Formula in words, with the inputs as entered. */
  from: string;
  /** Why there is no value, where there is none: `bore is not on the sheet`. */
  missing: string | null;
}
