import type { ChartDescription } from '@pullbook/charts';
import type { CorrectionId } from '@pullbook/core/air';
import type { Audience } from '@pullbook/core/pull';
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

/** Who may see a thing outside the book, for a form, and in words. */
export interface ShownAudience extends Audience {
  words: string;
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
  /** ascending, on the chart's axis: r/min; as recorded, s or the row's number */
  at: number[];
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
  /** Engines of different size side by side; only in a survey. */
  survey: ShownTable | null;
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
    kind: 'comparison' | 'survey';
    correction: CorrectionId;
    averagesWindowRpm: [number, number] | null;
    commonWindowRpm: [number, number] | null;
  };
  /** What the standard says of itself and of supercharged engines. */
  standardNotes: string[];
  ownRemark: string;
  audience: ShownAudience;
  /** What of it is not for everyone, a line each; empty: it may be published. */
  heldBack: string[];
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
  /** Rows of the recording; 0 for a summary. `RecordedPage` shows them. */
  recordedRows: number;
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
  /** Width of the means where the shop's settings set it, r/min; `null`: they did not. */
  shopBinWidthRpm: number | null;
  conditions: { label: string; value: string }[];
  audience: ShownAudience;
  notes: string[];
  events: string[];
  file: { name: string; hash: string } | null;
  remarks: ShownRemark[];
  trials: { id: string; question: string }[];
}

/** How a recording is looked at. */
export interface RecordedLook {
  /** `time`: over the row's number where there is no time. */
  over: 'time' | 'speed';
  /** Only this part of the axis, s, row or r/min; `null`: all. */
  range: [low: number, high: number] | null;
  /** Ids of the channels to show; `null`: those that mean something. */
  channels: string[] | null;
}

/** A pull's channels as recorded, no finer than a screen shows: a recording of any length is small on its way. */
export interface RecordedPage {
  /** What it is over, and what else it could be over. */
  over: 'time' | 'speed';
  hasTime: boolean;
  hasSpeed: boolean;
  /** Ranges of the window and of what was cut, spikes marked; `null` where nothing can be drawn so. */
  chart: ChartDescription | null;
  cursor: CursorTable | null;
  /** Where an end of the window can be set along the axis, ascending, and the engine speed it then has. */
  windowSteps: { at: number[]; engineSpeedRpm: number[] };
  /** All that can be shown, in the order of reading. */
  channels: { id: string; name: string; unit: string; understood: boolean; shown: boolean }[];
}

export interface CombinationPage {
  id: string;
  name: string;
  engineName: string;
  revision: number;
  chips: Chip[];
  sections: {
    title: string;
    rows: {
      label: string;
      text: string;
      origin: string;
      unknown: boolean;
      /** Of a flow sheet or a lift curve, with what it was taken with; missing: an ordinary line. */
      table?: ShownTable;
      details?: { label: string; text: string }[];
    }[];
  }[];
  derived: { label: string; value: string; from: string }[];
  madeFrom: { id: string; name: string } | null;
  changes: { label: string; before: string; after: string; packageName: string | null }[];
  packages: string[];
  pulls: PullRow[];
  /** The sheet as YAML text, to copy and edit. */
  sheetText: string;
  remarks: ShownRemark[];
}
