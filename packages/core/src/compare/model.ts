import type { Combination, PartChange } from '../combination/index.ts';
import type {
  Cell,
  ChannelMeaning,
  CorrectionApplied,
  Peak,
  Pull,
  PullView,
  PullViewer,
} from '../pull/index.ts';
import type { Remark, SaidParts } from '../remark/index.ts';
import type { ScatterComparison, ScatterHistory, Trend, VerdictWord } from '../scatter/index.ts';

/** One combination to compare, with its counted pulls. */
export interface ComparedInput {
  /** `A`, `B`, … in the order of the trial. `A` is the baseline. */
  key: string;
  combinationId: string | null;
  pulls: { pull: Pull; view: PullView }[];
}

/** One channel of one combination on the comparison's nodes. */
export interface ComparedChannel {
  /** Mean of the pulls, inside unit; NaN where any counted pull has no figure. */
  mean: Float64Array;
  /** Each pull on the same nodes. */
  pulls: { pullId: string; values: Float64Array }[];
}

export interface ComparedCombination {
  key: string;
  combinationId: string | null;
  pullIds: string[];
  channels: Map<ChannelMeaning, ComparedChannel>;
  /** Of the mean curve, each over the combination's own window. */
  peakPower: Peak | null;
  peakTorque: Peak | null;
  /** Means over the averages' window, inside units. */
  averages: Map<ChannelMeaning, number>;
  /** Standard deviation of the pulls' average power over the window as a share of it; `null` with one pull. */
  repeatSpread: number | null;
  /** 95 % band of the highest power of the mean curve as these pulls know it, W; `null`: no scatter to judge by. */
  peakPowerBand: [low: number, high: number] | null;
}

/** A combination against the baseline, on the common window only. */
export interface Gain {
  baselineKey: string;
  changedKey: string;
  /** Changed less baseline, one value a node, inside units; NaN outside the common window. */
  power: Float64Array;
  torque: Float64Array;
  /** W, mean over the averages' window */
  meanPower: number;
  /** Share of the baseline's mean power; NaN where that is not above zero. */
  meanPowerRatio: number;
  /** N·m */
  meanTorque: number;
  /** Pa; `null`: no boost in both */
  meanBoost: number | null;
  /** Change of boost at the highest common speed, Pa. */
  topBoost: number | null;
  largest: { power: number; atRpm: number };
  smallest: { power: number; atRpm: number };
  /** Speeds where the gain in power changes sign, r/min. */
  crossoversRpm: number[];
  /** How sure the gain is; `null` where no scatter was given to judge it by. */
  band: GainBand | null;
  /** What may be said of it; `null` where there is no band. */
  verdict: Verdict | null;
}

/** Bands of a gain. Inside units; one value a node of the comparison, NaN outside the window or without a figure. */
export interface GainBand {
  /** Of the mean gain over the averages' window, 95 %: W, and as a share of the baseline's mean power. */
  meanPower: [low: number, high: number];
  meanPowerRatio: [low: number, high: number];
  /** 80 %, W */
  likelyPower: [low: number, high: number];
  /** W; for one speed chosen beforehand. */
  pointwise: { low: Float64Array; high: Float64Array };
  /** W; for all speeds of the window at once. */
  simultaneous: { low: Float64Array; high: Float64Array };
  /** Stretches in which the simultaneous band excludes zero. */
  clearRanges: { fromRpm: number; toRpm: number; sign: 1 | -1 }[];
  crossovers: { atRpm: number; lowRpm: number; highRpm: number }[];
  /** Gain of the peaks where both are peaks or both the last rows, W, 95 %; `null`: not both known. */
  peakPower: { gain: number; low: number; high: number } | null;
  /** Everything the band was made from, for tables and for who wants to see. */
  scatter: ScatterComparison;
}

export interface Verdict {
  word: VerdictWord;
  /** Smallest gain that matters, share of the baseline's mean power. */
  worthwhileRatio: number;
  /** No difference is larger than this, share (two one-sided tests at 5 %). */
  noDifferenceLargerThan: number;
  pulls: { baseline: number; changed: number };
  setUps: { baseline: number; changed: number };
}

/** Gain of the highest figures of two combinations of which one has no curve: what a summary lets be said. W, 95 %. */
export interface PeakGain {
  baselineKey: string;
  changedKey: string;
  gain: number;
  low: number;
  high: number;
  /** What it rests on and what it cannot say. */
  why: string;
}

/** One condition in which the compared pulls differ, or may. */
export interface ConditionDifference {
  id: string;
  /** `Oil at the start` */
  label: string;
  /** Text for each combination's key. */
  values: Record<string, string>;
  /** The same texts in pieces, where a combination's has figures. */
  parts?: Record<string, SaidParts>;
  /** `alike`: said so because it was looked at. `differs`: beyond what the trade lets pass. `unknown`: not noted. */
  state: 'alike' | 'differs' | 'unknown';
  /** Why it matters and the limit used; with its source or `common practice, no source`. */
  why: string;
}

export interface Comparison {
  correction: CorrectionApplied;
  binWidthRpm: number;
  /** All nodes that any pull reaches, ascending, r/min. */
  engineSpeedRpm: Float64Array;
  /** First and last node that every counted pull covers; `null`: no overlap. */
  commonWindowRpm: [low: number, high: number] | null;
  /** Window of the averages: the common one unless set by hand (clipped to the common one). */
  averagesWindowRpm: [low: number, high: number] | null;
  combinations: ComparedCombination[];
  gains: Gain[];
  /** Where a printed or remembered peak stands against another figure. */
  peakGains: PeakGain[];
  /** Soak and drift through the pulls of one combination, as far as they can be told from scatter. */
  trends: Trend[];
  conditions: ConditionDifference[];
  remarks: Remark[];
}

/** What is known beside the counted pulls, for the conditions. */
export interface ComparedBeside {
  /** By id. */
  combinations: ReadonlyMap<string, Combination>;
  /** Lines changed from the baseline, by key of the changed combination. */
  changes: Readonly<Record<string, readonly PartChange[]>>;
  /** Pulls of the same sessions, counted or not: what went before each pull. */
  pulls: readonly Pull[];
}

export interface CompareOptions {
  /** How a pull is viewed anew, in another standard or width; missing: `viewPull`. */
  viewed?: PullViewer | undefined;
  /** r/min; missing: the common window */
  averagesWindowRpm?: [low: number, high: number] | null;
  /** Combination the others are held against; missing: the first input. `null`: no gain is claimed. */
  baselineKey?: string | null;
  /** Sheets and other pulls; missing: nothing is said of parts and fuel, and a wait only between counted pulls. */
  beside?: ComparedBeside;
  /** Described cells, for the calibration of their instruments. */
  cells?: readonly Cell[];
  /** What is known of the scatter before these pulls; missing: no band and no verdict. */
  history?: ScatterHistory | null;
  /** Keys of combinations that went on without taking the engine apart: they share the baseline's set-up on its day. */
  keptOnTheBrake?: readonly string[];
  /** Smallest gain that matters, share; missing: 0.01. */
  worthwhile?: number | undefined;
  /** Counted pulls at which the verdict is looked at; missing: one look. */
  looksAt?: readonly number[] | null;
}
