import type { PredictedCurve } from '../fit/index.ts';
import type { Spread } from '../scatter/index.ts';

export type { PredictedCurve, PredictedFigure } from '../fit/index.ts';

/** Kinds of engine that scatter differently. */
export type InductionClass = 'injected' | 'carburetted' | 'supercharged';

/** A new shop's own guess of its scatter, editable; what is left out stands as built in. */
export interface ScatterPrior {
  /** Shares. */
  pull: Record<InductionClass, number>;
  setUp: number;
  day: number;
  cell: number;
  within: number;
  withinLengthRpm: number;
  driftPerHour: number;
  degreesOfFreedom: { pull: number; setUp: number; day: number; cell: number; within: number; drift: number };
}

/** A pull as the shop's figures need it: few numbers, kept beside the list. */
export interface PullDigest {
  pullId: string;
  engineId: string | null;
  combinationId: string | null;
  setUpId: string | null;
  sessionId: string | null;
  /** ISO 8601 date; `null` unknown */
  day: string | null;
  cell: string | null;
  /** Hours since the start of its day. */
  hours: number | null;
  induction: InductionClass | null;
  /** Tune and standard as text: pulls that differ in it were run differently on purpose, and are no repeats. */
  footing: string;
  /** Logarithm of power at whole 250 r/min, rising; `null` where there is none. */
  fromRpm: number;
  stepRpm: number;
  logPower: (number | null)[];
  /** Rejected in a trial, aborted, or a warm-up: never counts for repeatability. */
  counts: boolean;
}

/** Repeatability of one cell and kind of engine, from clusters (an engine's set-up on one day). */
export interface Repeatability {
  cell: string | null;
  induction: InductionClass;
  clusters: number;
  pulls: number;
  spread: Spread;
  /** Two pulls of one set-up on one day differ by no more than this in 95 of 100 cases: Student's t of its degrees of freedom. */
  twoPullsDiffer: number;
  /** By month (`2026-03`), for the picture over time. */
  overTime: { month: string; sigma: number; degreesOfFreedom: number; clusters: number }[];
}

/** How one session moved while it lasted. Shares of power. */
export interface SessionDrift {
  /** `null`: its pulls name none, and are together by day and cell. */
  sessionId: string | null;
  day: string;
  cell: string | null;
  /** `null`: no combination was pulled again after another, and none four times. */
  perHour: number | null;
  /** One standard deviation of `perHour` by the scatter of pulls. */
  perHourSpread: number | null;
  pulls: number;
  /** The last pulls of a combination against its first, of the one that spans the session longest; `null`: none came back. */
  sentinel: number | null;
}

/** Everything the shop's pulls say about its own scatter. */
export interface ShopFigures {
  repeatability: Repeatability[];
  /** From returns to the same combination in another set-up. */
  setUp: { returns: number; spread: Spread };
  day: { returns: number; spread: Spread };
  /** From the offsets between cells. */
  cell: { pairs: number; spread: Spread };
  drift: { sessions: SessionDrift[]; spread: Spread };
  /** Cell against cell, from one engine in one combination run in both; share, changed cell over first. */
  cellOffsets: { from: string; to: string; ratio: number; low: number; high: number; engines: number }[];
}

/** A prediction kept before the pull, beside what was measured after it. */
export interface Prediction {
  id: string;
  trialId: string;
  /** Combination it is about. */
  key: string;
  /** Mean gain over the window as a share of the baseline, highest power in W, or highest boost in Pa. */
  what: 'meanGain' | 'peakPower' | 'highestBoost';
  value: number;
  low: number;
  high: number;
  /** What it rests on: `guess`, `scaled from the naturally aspirated pair`, … */
  basis: string;
  /** The whole curve, where a match foretold it; `null`: only the figure. */
  curve?: PredictedCurve | null | undefined;
  /** What computed it, so that it can be done again; `null`: a person's word. */
  madeBy?: { version: string; seed: number } | null | undefined;
  /** ISO 8601 */
  at: string;
}
