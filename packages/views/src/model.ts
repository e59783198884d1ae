import type { ChartDescription } from '@pullbook/charts';
import type { CorrectionId } from '@pullbook/core/air';
import type { DecimalMark, UnitSystem } from '@pullbook/core/quantity';
import type { RemarkLevel } from '@pullbook/core/remark';

/** How things are shown. */
export interface ViewOptions {
  units: UnitSystem;
  decimalMark: DecimalMark;
}

/** A sentence in parts, so that its figure can be set apart. */
export type SentencePart = { text: string; strong?: true };

export interface Chip {
  text: string;
  tone: 'quiet' | 'caution';
}

export interface ShownRemark {
  level: RemarkLevel;
  text: string;
  line?: number;
  column?: number;
}

/** A table ready to print: first column is the row's name. */
export interface ShownTable {
  id: string;
  title: string;
  columns: {
    text: string /** index of the combination whose colour and dash mark it; `null` none */;
    combination: number | null;
  }[];
  rows: { name: string; unit: string; cells: string[] }[];
}

/** Exact numbers at every node, so that the page only looks them up. */
export interface CursorTable {
  /** ascending, r/min */
  engineSpeedRpm: number[];
  columns: { key: string; combination: number | null }[];
  rows: {
    id: string;
    name: string;
    unit: string;
    /** one string array a column, one string a node; '' where there is no figure */
    cells: string[][];
  }[];
  /** node where the cursor starts */
  start: number;
}

export interface TrialCard {
  id: string;
  question: string;
  sentence: SentencePart[];
  chips: Chip[];
  /** `5 pulls · 2 combinations · 14 March 2026` */
  facts: string;
  /** Small picture: power only; `null` when there is nothing to draw. */
  picture: ChartDescription | null;
}

export interface EvidenceRow {
  pullId: string;
  name: string;
  key: string;
  combination: number;
  role: 'counted' | 'rejected' | 'warm-up';
  reason: string;
  /** `16 March 2026 10:42 · peak 503 hp at 6,450 rpm` */
  facts: string;
}

export interface TrialPage {
  id: string;
  question: string;
  sentence: SentencePart[];
  /** Chips of state: `No baseline`, `Invented data`. A verdict's chip joins them once there are verdicts. */
  chips: Chip[];
  /** Standard, pulls, days, window: what the answer rests on. */
  basis: string;
  /** What a careful reader must know before believing it: one sentence each. */
  caveats: string[];
  combinations: {
    key: string;
    id: string;
    shortName: string;
    name: string;
    combination: number;
    counted: number;
  }[];
  chart: ChartDescription | null;
  cursor: CursorTable | null;
  peaks: ShownTable | null;
  averages: ShownTable | null;
  /** At chosen speeds, every 500 r/min. */
  atSpeeds: ShownTable | null;
  likeForLike: { label: string; values: string; state: 'alike' | 'differs' | 'unknown'; why: string }[];
  changes: {
    key: string;
    lines: { label: string; before: string; after: string; packageName: string | null }[];
  }[];
  evidence: EvidenceRow[];
  missing: string[];
  remarks: ShownRemark[];
  settings: {
    correction: CorrectionId;
    averagesWindowRpm: [number, number] | null;
    commonWindowRpm: [number, number] | null;
  };
  /** What the standard says of itself and of supercharged engines. */
  standardNotes: string[];
  ownRemark: string;
}

export interface PullRow {
  id: string;
  name: string;
  combinationId: string | null;
  combinationName: string;
  recordedAt: string;
  cell: string;
  /** `494 hp at 6,500 rpm, still climbing` */
  peakPower: string;
  peakTorque: string;
  standard: string;
  chips: Chip[];
}

export interface PullPage {
  id: string;
  name: string;
  headline: SentencePart[];
  chips: Chip[];
  basis: string;
  /** Gridded curves over engine speed. */
  chart: ChartDescription | null;
  /** Channels as recorded over the row's time or number, with the window and the spikes; `null` for a summary. */
  recorded: ChartDescription | null;
  cursor: CursorTable | null;
  /** What was cut and why. */
  cuts: string[];
  spikes: string[];
  channels: {
    name: string;
    meaning: string;
    unit: string;
    count: number;
    low: string;
    high: string;
    origin: string;
  }[];
  /** The pull's channels, each meaning once, as they came. */
  channelMeanings: { id: string; label: string }[];
  /** How the pull is read, as plain numbers for a form. */
  treatment: {
    /** Seconds by which a channel is late, by meaning; missing: 0. */
    lagsS: Record<string, number>;
    /** `null`: found */
    windowRpm: [number, number] | null;
    /** `null`: adapted to the sampling */
    binWidthRpm: number | null;
    addInertia: boolean;
  };
  conditions: { label: string; value: string }[];
  notes: string[];
  events: string[];
  file: { name: string; hash: string } | null;
  remarks: ShownRemark[];
  trials: { id: string; question: string }[];
}

export interface CombinationPage {
  id: string;
  name: string;
  engineName: string;
  revision: number;
  chips: Chip[];
  sections: { title: string; rows: { label: string; text: string; origin: string; unknown: boolean }[] }[];
  derived: { label: string; value: string; from: string }[];
  madeFrom: { id: string; name: string } | null;
  changes: { label: string; before: string; after: string; packageName: string | null }[];
  packages: string[];
  pulls: PullRow[];
  /** The sheet as YAML text, to copy and edit. */
  sheetText: string;
  remarks: ShownRemark[];
}
