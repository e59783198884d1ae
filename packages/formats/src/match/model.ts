import type { AirState } from '@pullbook/core/air';
import type { BaselineTable, CompressorMap, StatedModel } from '@pullbook/core/airpath';
import type { CombinationSheet } from '@pullbook/core/combination';
import type { BoostedPull } from '@pullbook/core/fit';

/** A compressor map as it is written: what the book adds when it keeps it is missing. */
export type WrittenMap = Omit<CompressorMap, 'id' | 'createdAt'>;

/** Something that stands elsewhere: a file beside the match file, or a thing in the book by its id or name. */
export type Elsewhere = { from: 'file'; path: string } | { from: 'book'; name: string };

/** The combination: its sheet, or where to find it. */
export type WrittenCombination = { from: 'sheet'; sheet: CombinationSheet } | Elsewhere;

/** A naturally aspirated curve written in the file. */
export type WrittenCurve = Omit<BaselineTable, 'displacement' | 'compressionRatio'>;

/** What the engine does without the supercharger: pulls of the book by id or name, or a table. */
export type WrittenBaseline = { from: 'pulls'; pulls: string[] } | { from: 'table'; curve: WrittenCurve };

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
  /** `null`: no bands. */
  bands: { draws: number; seed: number } | null;
  /** Boosted pulls to which the match is fitted; `null`: no fit. */
  fit: { from: 'pulls'; pulls: string[] } | { from: 'table'; pull: WrittenBoostedPull } | null;
  whatIf: WrittenWhatIf[];
}
