import type { Cell, ChannelMeaning, CorrectionApplied, Peak, Pull, PullView } from '../pull/index.ts';
import type { Remark, SaidParts } from '../remark/index.ts';

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
  /** Share of the baseline's mean power. */
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
  /** Place of the bands and the verdict, which the repeats' statistics will fill; `null` until then. */
  band: null;
  verdict: null;
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
  conditions: ConditionDifference[];
  remarks: Remark[];
}

export interface CompareOptions {
  /** r/min; missing: the common window */
  averagesWindowRpm?: [low: number, high: number] | null;
  /** Combination the others are held against; missing: the first input. `null`: no gain is claimed. */
  baselineKey?: string | null;
  /** Described cells, for the calibration of their instruments. */
  cells?: readonly Cell[];
}
