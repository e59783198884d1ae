/** What a person plans to find out with how many pulls. Kept with the trial. */
export interface TrialPlan {
  /** Gain that is to be seen, share of the baseline's mean power: 0.02. */
  gainRatio: number;
  /** Chance to see it, if it is there: 0.8. */
  odds: number;
  /** In the order in which they are to be made, by combination key. */
  pulls: { key: string }[];
  /** Counted pulls at which the verdict is looked at, rising; the last is all of them. */
  looksAt: number[];
  /** Lines of the stop-criteria card as the person left them; `null`: as worked out. */
  stopCriteria: StopCriterion[] | null;
  notes: string;
}

/** One line of the stop-criteria card. */
export interface StopCriterion {
  id: string;
  /** `Oil pressure below` */
  label: string;
  /** With the unit, as printed: `7 psi per 1,000 rpm`. */
  limit: string;
  /** Its source, or `common practice, no source`. */
  source: string;
}
