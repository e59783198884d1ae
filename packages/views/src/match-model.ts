import type { ChartDescription, MapDescription } from '@pullbook/charts';
import type { AirState } from '@pullbook/core/air';
import type { FigureBand, MatchFigure, MatchInput, SpreadGroup } from '@pullbook/core/airpath';
import type { MatchFit, ScaledBaseline } from '@pullbook/core/fit';
import type { Fuel, FuelSupply } from '@pullbook/core/fuel';
import type { Remark } from '@pullbook/core/remark';
import type { Finding } from '@pullbook/core/rule';
import type { Chip, CursorTable, FindingGroup, SentencePart, ShownRemark, ShownTable } from './model.ts';

/** One combination on the page of a match: what it rests on, and what was measured of it. Plain data. */
export interface MatchedCombination {
  /** As in the trial: `A`, `B`. */
  key: string;
  combinationId: string;
  name: string;
  /** Place of its colour and dash. */
  combination: number;
  input: MatchInput;
  spread: SpreadGroup[];
  /** `null`: no boosted pull of it was fitted. */
  fit: MatchFit | null;
  /** Means of its own pulls, observed, on nodes; `null`: it was never pulled. Inside units. */
  measured: {
    pullIds: string[];
    engineSpeedRpm: number[];
    power: number[];
    torque: number[];
    boost: number[] | null;
    chargeTemperature: number[] | null;
  } | null;
  /** What it burns, where fuel meets air, and what the pulls behind it burnt. */
  supply: Pick<FuelSupply, 'fuel' | 'mixes'> & { behind: Fuel };
  /** What was taken for what is not known, in a sentence each. */
  assumptions: Remark[];
  findings: Finding[];
}

/** What the page needs to work a what-if by itself. */
export interface MatchBundle {
  trialId: string | null;
  title: string;
  /** Why there is no match where there is none; the rest is then empty. */
  silent: Remark[];
  combinations: MatchedCombination[];
  /**
   * Combinations of the trial without a supercharger, or that cannot be matched, with the reason; `scaled`: the curve that stands in
   * for pulls that were never made.
   */
  left: { key: string; name: string; reason: Remark; scaled?: ScaledBaseline }[];
  remarks: Remark[];
}

/** What is tried, in inside units; what is left out stands as it is. */
export interface WhatIf {
  /** Combination it is tried on. */
  key: string;
  crankPulleyDiameter?: number;
  blowerPulleyDiameter?: number;
  stepUp?: number;
  cooler?: 'as it is' | 'none' | { effectiveness: number; coolantTemperature: number | null };
  air?: AirState;
  /** On the work of the air as it is, with what a fit found of it: 1.03 is 3 % more. */
  workFactor?: number;
  /** Another fuel, with what it does by rule of thumb. */
  fuel?: Fuel;
  /** K, in place of what the fuel cools the charge by. */
  evaporationCooling?: number;
  /** +8 % air swallowed between two engine speeds: `{ share: 0.08, … }`. */
  breathing?: { fromRpm: number; toRpm: number; share: number };
}

/** A row of the fit's parameters as shown. */
export interface ShownParameter {
  name: string;
  prior: string;
  value: string;
  /** Channels that speak of it, or why it stays. */
  from: string;
}

export interface MatchPage {
  title: string;
  /** What the change does and why, as one sentence: power up, boost down, the line falls there. */
  sentence: SentencePart[];
  /** More of why, each with its figures. */
  why: string[];
  /** Power, torque, boost, charge temperature: matched with bands, measured beside. */
  chart: ChartDescription;
  cursor: CursorTable;
  map: MapDescription | null;
  /** Where the crank's power goes, of the combination tried. */
  powerGoes: ChartDescription;
  table: ShownTable;
  /** Drive, belt, impeller: label and value. */
  drive: { label: string; value: string }[];
  fit: {
    name: string;
    parameters: ShownParameter[];
    residuals: string[];
    readings: { text: string; wouldSettle: string }[];
  }[];
  findings: FindingGroup[];
  assumptions: ShownRemark[];
  remarks: ShownRemark[];
  cautions: string[];
  left: { name: string; reason: string }[];
}

/** Bands of the cases of a page in their order, and of their differences to the first; `null`: not come yet, or none. */
export interface PageBands {
  cases: (Record<MatchFigure, FigureBand> | null)[];
  differences: (Record<MatchFigure, FigureBand> | null)[];
}

/** What the page is made of: bands come after the curves. */
export interface MatchPageInput {
  bundle: MatchBundle;
  whatIf: WhatIf | null;
  bands: PageBands | null;
}

/** A compressor map as its page says it. */
export interface MapPage {
  id: string;
  name: string;
  /** Assumed, invented, measured: what must not be overlooked. */
  chips: Chip[];
  /** Form, reference, sizes, origin. */
  facts: { label: string; value: string }[];
  /** How well the fitted map meets its own points, whole and line by line. */
  quality: string[];
  /** `null`: it could not be fitted; the remarks say why. */
  picture: MapDescription | null;
  points: ShownTable;
  notes: string;
  remarks: ShownRemark[];
}

/** A line of the list of maps, with its small picture. */
export interface MapCard {
  id: string;
  name: string;
  chips: Chip[];
  /** `74 points on 6 lines, 30,000 to 58,000 rpm` */
  facts: string;
  /** `pressure ratio within 0.6 % of its points`; '' not fitted */
  quality: string;
  picture: MapDescription | null;
}
