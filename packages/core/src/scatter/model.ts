/**
 * What repeats say about how sure a difference is. This room knows arrays only, no pulls, parts or pages: ten thousand
 * simulated comparisons run through it without a book. Shares (0.004 is 0.4 %) on the scale of the logarithm of power.
 */

/** A standard deviation and how well it is known. */
export interface Spread {
  /** One standard deviation as a share of power; 0: none. */
  sigma: number;
  /** Of this figure: large where it is known well, 4 where it is little more than a guess. */
  degreesOfFreedom: number;
  /** `built-in`: the trade's ranges. `setting`: the shop's own guess. `shop`: from its pulls. `stated`: said for this comparison. */
  from: 'built-in' | 'setting' | 'shop' | 'stated';
}

/** What was known of the scatter before these pulls: the prior of every spread. */
export interface ScatterHistory {
  /** Between pulls of one set-up, of the average over a window. */
  pull: Spread;
  /** Added by taking apart and putting together, the same day. */
  setUp: Spread;
  /** Added by another day, over that of a set-up. */
  day: Spread;
  /** Added by another cell. */
  cell: Spread;
  /** Of one engine speed against the pull's own average, after binning; neighbours `lengthRpm` apart are alike by 1/e. */
  within: Spread & { lengthRpm: number };
  /** Of the slope in time within a session, share of power an hour; its mean is 0. */
  driftPerHour: Spread;
}

/** One pull as arrays. */
export interface PullArray {
  /** r/min, rising; every pull of a comparison may have its own. */
  engineSpeedRpm: ArrayLike<number>;
  /** W (or any unit, the same in all); NaN: no figure at this speed. */
  power: ArrayLike<number>;
  /** Combination it stands for. */
  group: string;
  /** Pulls of one name share the offset of one set-up, across groups too; `null`: not known, taken as its group's own of that session. */
  setUp: string | null;
  /** Day in a cell; `null`: not known, taken as one with all others that are not known. */
  session: string | null;
  cell: string | null;
  /** Hours within its session from any start; `null`: not known. Used for drift. */
  hours: number | null;
}

export interface ScatterOptions {
  history: ScatterHistory;
  /** Group the others are held against. */
  baseline: string;
  /** r/min; `null`: what all pulls cover. */
  windowRpm?: readonly [low: number, high: number] | null;
  /** Smallest gain that matters, as a share: what `no-difference` is held against. Missing: 0.01. */
  worthwhile?: number;
  /** Where verdicts are looked at while pulls are made: shares the error over the looks. Missing: one look. */
  looks?: {
    /** Counted pulls at each look planned, rising; the last is the whole plan. */ at: readonly number[];
  } | null;
}

/** `clear`: the 95 % band excludes zero. `likely`: the 80 % band does. `no-difference`: the 90 % band lies within the worthwhile gain. */
export type VerdictWord = 'clear' | 'likely' | 'no-difference' | 'within-noise';

/** A spread as it was used: history and repeats put together. */
export interface SpreadUsed {
  sigma: number;
  degreesOfFreedom: number;
  /** What the repeats at hand say alone; `null`: no repeat says anything. */
  fromRepeats: { sigma: number; degreesOfFreedom: number } | null;
  /** The repeats scatter more than history allows (above the 75 % point of F), so that history was set aside. */
  historySetAside: boolean;
  from: Spread['from'];
}

/** Where the variance of a gain comes from, as a share of power squared. */
export interface VarianceParts {
  pull: number;
  setUp: number;
  day: number;
  cell: number;
  drift: number;
}

/** Whether a fall or rise through the pulls of one group is told from scatter. */
export interface Trend {
  group: string;
  setUp: string | null;
  pulls: number;
  /** Share of power a pull; 95 % band. */
  perPull: number;
  low: number;
  high: number;
  /** `seen`: zero is outside the band. `not-seen`: it is inside. `cannot-tell`: too few pulls and no waits or start temperatures to go by. */
  state: 'seen' | 'not-seen' | 'cannot-tell';
}

/** One group against the baseline. */
export interface GroupGain {
  group: string;
  /** Gain of average power over the window as a share of the baseline's: exp(logGain) - 1. */
  ratio: number;
  logGain: number;
  /** Of logGain. */
  standardError: number;
  /** Of the Student t with the same 97.5 % point as the parts together. */
  degreesOfFreedom: number;
  /** Half-width of the 95 % band over the standard error: Student's t, wider for several groups and for planned looks. */
  critical: number;
  /** 95 %, shares. */
  low: number;
  high: number;
  /** 80 %, shares. */
  likelyLow: number;
  likelyHigh: number;
  /** The larger end of the 90 % band, share: by two one-sided tests no difference is larger. */
  noDifferenceLargerThan: number;
  verdict: VerdictWord;
  parts: VarianceParts;
  /** Weight of each pull in logGain, in the order given: changed about 1 / n, baseline about -1 / n. */
  weights: Float64Array;
  /** At each node of the comparison; NaN where a counted pull has no figure. */
  curve: {
    logGain: Float64Array;
    /** Half-widths on the log scale, 95 %: for one speed chosen beforehand, and for all speeds of the window at once. */
    pointwise: Float64Array;
    simultaneous: Float64Array;
    criticalPointwise: number;
    criticalSimultaneous: number;
    degreesOfFreedom: number;
  };
  /** Stretches in which the simultaneous band excludes zero. */
  clearRanges: { fromRpm: number; toRpm: number; sign: 1 | -1 }[];
  /** Where the gain changes sign, with the speeds round it at which the pointwise band cannot tell. */
  crossovers: { atRpm: number; lowRpm: number; highRpm: number }[];
  /** Which planned look this is and the error spent up to it; `null`: one look. */
  look: { number: number; of: number; alphaSpent: number; criticalZ: number } | null;
}

/** A comparison of arrays. */
export interface ScatterComparison {
  /** Nodes of the window, r/min: those of the widest common grid, or the asked window's share of them. */
  engineSpeedRpm: Float64Array;
  windowRpm: [low: number, high: number];
  gains: GroupGain[];
  spreads: {
    pull: SpreadUsed;
    setUp: SpreadUsed;
    day: SpreadUsed;
    cell: SpreadUsed;
    within: SpreadUsed & { lengthRpm: number };
  };
  /** `taken-out`: the order of the pulls lets a straight drift cancel. `carried`: it does not, so its prior widens the band. `none`: all times equal or unknown. */
  drift: { handling: 'taken-out' | 'carried' | 'none'; perHour: number | null };
  trends: Trend[];
  /** Pulls and set-ups that count, by group. */
  counts: Map<string, { pulls: number; setUps: number; sessions: number }>;
  /** Different set-ups of all groups together: one that groups share is one. */
  setUps: number;
  /** At least one spread rests on the shop's pulls or on what was stated, and was not set aside. */
  fromHistory: boolean;
}
