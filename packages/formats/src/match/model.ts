import type { AirState, CorrectionId } from '@pullbook/core/air';
import type { Baseline, BaselineTable, CompressorMap, StatedModel } from '@pullbook/core/airpath';
import type { CombinationSheet } from '@pullbook/core/combination';
import type { BoostedPull } from '@pullbook/core/fit';
import type { Fuel } from '@pullbook/core/fuel';
import type { ChangePart, PartsList } from '@pullbook/core/reach';

/** A compressor map as it is written: what the book adds when it keeps it is missing. */
export type WrittenMap = Omit<CompressorMap, 'id' | 'createdAt'>;

/** Something that stands elsewhere: a file beside the match file, or a thing in the book by its id or name. */
export type Elsewhere = { from: 'file'; path: string } | { from: 'book'; name: string };

/** The combination: its sheet, or where to find it. */
export type WrittenCombination = { from: 'sheet'; sheet: CombinationSheet } | Elsewhere;

/** A naturally aspirated curve written in the file. */
export type WrittenCurve = Omit<BaselineTable, 'displacement' | 'compressionRatio'>;

/** What the engine does without the supercharger: pulls of the book by id or name, or a table. */
export type WrittenBaseline = (
  | { from: 'pulls'; pulls: string[] }
  | { from: 'table'; curve: WrittenCurve }
) & {
  /** On which that was pulled, where it is not the combination's. */
  fuel?: Fuel;
};

/** A boosted pull written in the file; `air` `null`: that of the match. */
export type WrittenBoostedPull = Omit<BoostedPull, 'pullId' | 'air'> & { air: AirState | null };

/** What is tried on the combination, in inside units; what is left out stands as it is. */
export interface WrittenWhatIf {
  name: string;
  crankPulleyDiameter?: number;
  blowerPulleyDiameter?: number;
  stepUp?: number;
  cooler?: 'none' | { effectiveness: number; coolantTemperature: number | null };
  air?: AirState;
  workFactor?: number;
  evaporationCooling?: number;
  fuel?: Fuel;
  breathing?: { fromRpm: number; toRpm: number; share: number };
}

/** A match file as it was read: everything checked, in inside units, nothing computed but the air. */
export interface MatchFile {
  schemaVersion: 1;
  name: string;
  combination: WrittenCombination;
  baseline: WrittenBaseline;
  /** `null`: what the sheet says of its supercharger, a map by its name or a rating. */
  map: { from: 'written'; map: WrittenMap } | Elsewhere | null;
  /** Air of the match; `null`: the baseline's. */
  air: AirState | null;
  /** What is stated of the model in place of what the sheet says; empty: nothing. */
  model: StatedModel;
  /** W, one friction power at every speed in place of the baseline's; `null`: the baseline's. */
  frictionPower: number | null;
  /** Of the baseline's charge, where its fuel was another; empty: as in the match. */
  baselineCharge: Pick<Baseline, 'fuelVapour' | 'evaporationCooling'>;
  /** `null`: no bands. */
  bands: { draws: number; seed: number } | null;
  /** Boosted pulls to which the match is fitted; `null`: no fit. */
  fit: { from: 'pulls'; pulls: string[] } | { from: 'table'; pull: WrittenBoostedPull } | null;
  whatIf: WrittenWhatIf[];
  /** Factors over engine speed that no single number tells; `null`: none. */
  overSpeed: WrittenOverSpeed | null;
  /** What is asked of it; `null`: nothing. */
  reach: WrittenReach | null;
}

/** Factors over engine speed, read between their speeds and held beyond them; `null`: 1 at every speed. */
export interface WrittenOverSpeed {
  engineSpeedRpm: number[];
  /** On the head of the compressor. */
  head: number[] | null;
  /** On the air swallowed. */
  air: number[] | null;
  /** On the work an air mass does, by a fit. */
  work: number[] | null;
  /** On that work, by another fuel. */
  fuel: number[] | null;
}

/** A target and what may be changed for it, in inside units; `null`: not said. */
export interface WrittenReach {
  power: number | null;
  atRpm: number | null;
  windowRpm: [low: number, high: number] | null;
  boostCap: number | null;
  correction: CorrectionId | null;
  without: ChangePart[];
  mostChanges: number | null;
  draws: number | null;
  seed: number | null;
  /** Lists in place of the shop's, or the usual ones. */
  parts: { from: 'written'; lists: Partial<PartsList> } | { from: 'file'; path: string } | null;
  superchargers: {
    name: string;
    /** Lines in place of the engine's own: supercharger, drive, cooler. */
    sections: CombinationSheet['sections'];
    map: { from: 'written'; map: WrittenMap } | Elsewhere | null;
  }[];
  speedLimits: number[] | null;
  lambda: number | null;
  /** Of rules by their ids, text with units. */
  thresholds: Record<string, string>;
}
