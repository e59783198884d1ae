import type { ChartDescription } from '@pullbook/charts';
import type { CorrectionId } from '@pullbook/core/air';
import type { Audience } from '@pullbook/core/pull';
import type { DecimalMark, UnitSystem } from '@pullbook/core/quantity';
import type { RemarkLevel } from '@pullbook/core/remark';
import type { VerdictWord } from '@pullbook/core/scatter';
import type { Badge } from '@pullbook/core/trial';
import type { PlannedRow } from './planned-pulls.ts';
import type { TrialPredictions } from './predictions.ts';

/** How things are shown. */
export interface ViewOptions {
  units: UnitSystem;
  decimalMark: DecimalMark;
}

/** A sentence in parts: its figure set apart, and what it rests on held back. */
export type SentencePart = { text: string; strong?: true; quiet?: true };

export interface Chip {
  text: string;
  tone: 'quiet' | 'caution';
  /** A verdict has a shape before its word, so that it is told apart at a glance; missing: none. */
  verdict?: VerdictWord;
}

export interface ShownRemark {
  level: RemarkLevel;
  text: string;
  line?: number;
  column?: number;
}

/** What one rule says on a page. */
export interface FindingGroup {
  /** `V13` */
  ruleId: string;
  title: string;
  /** What the rule compares with what. */
  statement: string;
  source: string;
  level: 'note' | 'caution' | 'alarm';
  /** Every sentence of it was silenced. */
  silent: boolean;
  lines: {
    /** `pull <id>`: what a silencing is about. */
    subject: string;
    /** Its name, where it is not the page's own; else ''. */
    about: string;
    level: 'note' | 'caution' | 'alarm';
    input: string;
    text: string;
    silenced: { reason: string; at: string } | null;
  }[];
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
  /** Gains with their 95 % band for one speed alone, one string a node; missing: no band. */
  gains?: { name: string; unit: string; cells: string[] }[];
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

interface ShownEvidence {
  about: string;
  text: string;
  speaks: 'for' | 'against';
}

/** A badge of an honest comparison, with why it is earned or not. */
export type ShownBadge = Omit<Badge, 'parts'>;

/** Why a gain came out so, in words. */
export interface ShownExplanation {
  /** Of the changed combination. */
  key: string;
  /** '' where there is one gain */
  name: string;
  /** Short name of the likeliest reason; `null`: none is told. */
  likeliest: string | null;
  /** The likeliest reason, or why none is told. */
  sentence: string;
  evidence: ShownEvidence[];
  /** What the likeliest reason foretells and nobody measured. */
  notMeasured: string[];
  /** What the data cannot exclude, likeliest first. */
  notExcluded: { id: string; text: string; evidence: ShownEvidence[]; notMeasured: string[] }[];
  /** '' nothing is open */
  wouldSettle: string;
}

export interface TrialPage {
  id: string;
  question: string;
  sentence: SentencePart[];
  /** The verdict of each gain, and what it is said with; `name` '' where there is one gain. Empty without a verdict. */
  verdicts: { key: string; name: string; chip: Chip; figures: string }[];
  /** Chips of state: `No baseline`, `Invented data`. */
  chips: Chip[];
  /** For each gain with a verdict what may be said of it, and what not; `title` '' where there is one gain. */
  mayAndMayNot: { key: string; title: string; may: string[]; mayNot: string[] }[];
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
    /** What a person said of the engine, coming from the baseline; `null`: told by the parts that changed. */
    takenApart: boolean | null;
  }[];
  chart: ChartDescription | null;
  cursor: CursorTable | null;
  /** Engines of different size side by side; only in a survey. */
  survey: ShownTable | null;
  peaks: ShownTable | null;
  averages: ShownTable | null;
  /** At chosen speeds, every 500 r/min. */
  atSpeeds: ShownTable | null;
  /** Where the gain changes sign, what the bands are made of, trends. */
  bands: ShownTable[];
  /** Why each gain came out so; empty where no gain is claimed. */
  why: ShownExplanation[];
  /** What the comparison can show for itself; empty where no gain is claimed. */
  badges: ShownBadge[];
  likeForLike: {
    id: string;
    label: string;
    values: string;
    state: 'alike' | 'differs' | 'unknown';
    why: string;
    /** A changed part: what is asked about, not what stands in its way. */
    isPart: boolean;
    /** It differs and counts against like for like; what else differs, the band or another badge answers for. */
    isUnlike: boolean;
  }[];
  changes: {
    key: string;
    lines: { label: string; before: string; after: string; packageName: string | null }[];
  }[];
  evidence: EvidenceRow[];
  /** Pulls of the kept plan that are still to make. */
  planned: PlannedRow[];
  /** A combination has a supercharger: there is a match to look at. */
  isSupercharged: boolean;
  missing: string[];
  /** What was predicted before the pulls, and of which combinations something still can be. */
  predictions: TrialPredictions;
  /** What the rules say of it, silenced ones last; what stands here is not among the remarks. */
  findings: FindingGroup[];
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
  /** What the rules say of it, silenced ones last; what stands here is not among the remarks. */
  findings: FindingGroup[];
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
  /** There is a match to look at. */
  isSupercharged: boolean;
  /** The compressor map that the sheet names, with its id where the book has it; `null`: none. */
  map: { name: string; id: string | null } | null;
  pulls: PullRow[];
  /** The sheet as YAML text, to copy and edit. */
  sheetText: string;
  /** What the rules say of it, silenced ones last; what stands here is not among the remarks. */
  findings: FindingGroup[];
  remarks: ShownRemark[];
}
