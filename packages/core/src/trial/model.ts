import type { CorrectionId } from '../air/index.ts';
import type { Combination, Package, PartChange } from '../combination/index.ts';
import type { Comparison } from '../compare/index.ts';
import type { Audience, Pull, PullView, ShopReading } from '../pull/index.ts';
import type { Remark } from '../remark/index.ts';

export interface TrialCombination {
  /** `A`, `B`, …; `A` is the baseline. */
  key: string;
  combinationId: string;
  /** Few words that tell it from the others on a chart: `base cam`. */
  shortName: string;
}

export interface TrialPull {
  pullId: string;
  key: string;
  /** A rejected pull stays visible with its reason and never counts. */
  role: 'counted' | 'rejected' | 'warm-up';
  /** Why it has that role; needed for `rejected`. */
  reason: string | null;
}

/** One thing to find out. Refers to pulls many-to-many: one pull may serve many trials. */
export interface Trial {
  id: string;
  question: string;
  /** A survey is over different engines: common figures, no gain claimed. */
  kind: 'comparison' | 'survey';
  combinations: TrialCombination[];
  pulls: TrialPull[];
  correction: CorrectionId;
  /** r/min; `null`: the common window */
  averagesWindowRpm: [low: number, high: number] | null;
  /** The person's own words under the answer; '' none. */
  remark: string;
  audience: Audience;
  /** ISO 8601 */
  createdAt: string;
  invented: boolean;
}

export interface AnswerInput {
  trial: Trial;
  combinations: Combination[];
  packages: Package[];
  /** All pulls named by the trial, rejected ones too. */
  pulls: Pull[];
  /** Missing: a shop that never said anything. */
  shop?: ShopReading;
}

/** A trial from its pulls to its answer. */
export interface TrialAnswer {
  trial: Trial;
  /** `answered`: at least two combinations have a counted pull with common speeds. */
  state: 'answered' | 'no pulls' | 'no baseline' | 'one combination' | 'no common window' | 'survey';
  /** Combinations of the trial without a counted pull. */
  missing: TrialCombination[];
  comparison: Comparison | null;
  /** Every pull of the trial through the trial's recipe, rejected ones too. */
  views: Map<string, PullView>;
  pulls: Map<string, Pull>;
  combinations: Map<string, Combination>;
  /** What changed from the baseline, for each other key. */
  changes: Record<string, PartChange[]>;
  remarks: Remark[];
}
