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
  /** `text` and `count` have no unit. */
  kind: QuantityKind | 'text' | 'count';
  origin: Origin;
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

/** Derived figures of a sheet, with what they were derived from. SI. */
export interface DerivedFigure {
  id: 'displacement' | 'cylinderDisplacement' | 'compressionRatio' | 'meanPistonSpeed' | 'boreToStroke';
  label: string;
  value: number | null;
  kind: QuantityKind;
  /** Formula in words, with the inputs as entered. */
  from: string;
  /** Why there is no value, where there is none: `bore is not on the sheet`. */
  missing: string | null;
}
