import type { AirReading, CorrectionId } from '@pullbook/core/air';
import type { CompressorMap } from '@pullbook/core/airpath';
import type { TrialPlan } from '@pullbook/core/plan';
import type { Cell, Instrument, Places, PullEvent, PullSummary, Tune } from '@pullbook/core/pull';
import type { Prediction } from '@pullbook/core/shop';

/**
 * An invented season with one engine, told as a tester would hand it over: sheets, ordinary logger files and what was
 * written down beside them. `ref` strings tie the parts together; whoever makes a book of it gives the real ids.
 */
export interface DemoScenario {
  bookName: string;
  /** Every engine of the scenario is invented, and so is all the rest. */
  engines: { ref: string; name: string; buildRevision: string; notes: string }[];
  packages: { ref: string; name: string; covers: string[] }[];
  /** Sheets name them in their line `map`. */
  maps: DemoMap[];
  combinations: DemoCombination[];
  sessions: { ref: string; name: string; cell: string; day: string; notes: string }[];
  cells: DemoCell[];
  setUps: { ref: string; combinationRef: string; fittedAt: string; notes: string }[];
  files: DemoFile[];
  summaries: DemoSummary[];
  trials: DemoTrial[];
  predictions: DemoPrediction[];
  published: DemoPublication[];
  /** Rules that somebody silenced for a pull. */
  silenced: { ruleId: string; pullRef: string; reason: string; at: string }[];
}

/** A test cell as its shop would describe it; SI. */
export type DemoCell = Omit<Cell, 'id' | 'instruments'> & {
  ref: string;
  instruments: (Omit<Instrument, 'id'> & { ref: string })[];
};

/** A compressor map as its maker handed it over. */
export type DemoMap = Omit<CompressorMap, 'id'> & { ref: string };

export interface DemoCombination {
  ref: string;
  engineRef: string;
  name: string;
  /** The sheet as YAML. */
  sheetText: string;
  madeFromRef: string | null;
  packageRefs: string[];
  /** ISO 8601 */
  createdAt: string;
}

/** A logger's file and what was noted about its one pull. */
export interface DemoFile {
  name: string;
  bytes: Uint8Array;
  pull: DemoPull;
}

export interface DemoPull {
  ref: string;
  name: string;
  combinationRef: string;
  setUpRef: string;
  sessionRef: string;
  orderInSession: number;
  /** ISO 8601 with offset */
  recordedAt: string;
  cell: string;
  operator: null;
  weather: AirReading;
  tune: Tune;
  places: Places;
  notes: { at: string; text: string }[];
  events: PullEvent[];
  outcome: 'completed' | 'aborted';
  /** kg·m²; the figures of the file do not have its torque added back. */
  momentOfInertia: number;
}

/** A peak that is only remembered. */
export interface DemoSummary {
  ref: string;
  name: string;
  combinationRef: string;
  summary: PullSummary;
  origin: 'remembered';
  /** It was corrected, nobody knows by what. */
  carried: { standard: 'unknown'; factor: null };
  notes: { at: string; text: string }[];
}

export interface DemoTrial {
  ref: string;
  question: string;
  kind: 'comparison' | 'survey';
  combinations: { key: string; combinationRef: string; shortName: string }[];
  pulls: { pullRef: string; key: string; role: 'counted' | 'rejected' | 'warm-up'; reason: string | null }[];
  correction: CorrectionId;
  averagesWindowRpm: [low: number, high: number] | null;
  remark: string;
  /** Missing: nothing was planned. */
  plan?: TrialPlan;
  /** ISO 8601 */
  createdAt: string;
}

/** A still that left the shop with a figure that was mended afterwards. */
export interface DemoPublication {
  ref: string;
  trialRef: string;
  links: { where: string; day: string; note: string }[];
  /** The air of a pull as it was first written down; `DemoPull.weather` is what it truly was. */
  miswritten: { pullRef: string; weather: AirReading; reason: string };
  /** ISO 8601 */
  at: string;
}

/** What somebody expected before the pull. */
export type DemoPrediction = Omit<Prediction, 'id' | 'trialId'> & { ref: string; trialRef: string };
