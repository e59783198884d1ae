import type { CorrectionId } from '../air/index.ts';
import type { Combination, Package, PartChange } from '../combination/index.ts';
import type { Comparison } from '../compare/index.ts';
import type { Explanation, SlopeWord } from '../explain/index.ts';
import type { MatchFit } from '../fit/index.ts';
import type { TrialPlan } from '../plan/index.ts';
import type { Audience, Pull, PullView, PullViewer, ShopReading } from '../pull/index.ts';
import type { Remark, SaidParts } from '../remark/index.ts';
import type { Finding, RuleThresholds, Silenced } from '../rule/index.ts';
import type { ScatterHistory } from '../scatter/index.ts';
import type { Prediction } from '../shop/index.ts';

export interface TrialCombination {
  /** `A`, `B`, …; `A` is the baseline. */
  key: string;
  combinationId: string;
  /** Few words that tell it from the others on a chart: `base cam`. */
  shortName: string;
  /** Whether the engine was taken apart for it, coming from the baseline; `null`: told by the parts that changed. */
  takenApart?: boolean | null | undefined;
}

export interface TrialPull {
  pullId: string;
  key: string;
  /** A rejected pull stays visible with its reason and never counts. */
  role: 'counted' | 'rejected' | 'warm-up';
  /** Why it has that role; needed for `rejected`. */
  reason: string | null;
}

/** What a clip and a presentation can show, in the order in which they are told. */
export const STEP_IDS = [
  'asked',
  'combination',
  'baseline',
  'changed',
  'gain',
  'boost',
  'why',
  'caveat',
] as const;
export type StepId = (typeof STEP_IDS)[number];

/** One step as a person left it. */
export interface StepChoice {
  id: StepId;
  isShown: boolean;
  /** Its own title; `null`: as worked out. */
  title: string | null;
  /** s; `null`: as worked out. */
  seconds: number | null;
}

/** How a trial is told step by step. Kept with the trial. */
export interface RunningOrder {
  /** In the order in which they are shown; a step that is not named comes after those, as worked out. */
  steps: StepChoice[];
  /** 1: as worked out; 2: twice as fast. */
  speed: number;
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
  /** What is to be found out with which pulls; `null`: nothing was planned. */
  plan?: TrialPlan | null | undefined;
  /** How it is told step by step; `null` or missing: as worked out. */
  runningOrder?: RunningOrder | null | undefined;
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
  /** How the pulls are viewed; missing: `viewPull`. */
  viewed?: PullViewer;
  /** What is known of the scatter before these pulls; missing: no band and no verdict. */
  history?: ScatterHistory | null;
  /** Smallest gain that matters, share, where no plan says; missing: 0.01. */
  worthwhile?: number;
  /** What a person silenced of the rules, for the trial and its pulls. */
  silenced?: readonly Silenced[];
  /** The shop's own thresholds of the rules. */
  ruleThresholds?: RuleThresholds;
  predictions?: readonly Prediction[];
  /** What a supercharger match knows, by key of the combination; missing: none is at hand. */
  matched?: ReadonlyMap<string, MatchedSide>;
}

/** What of a match a trial's rules and reasons rest on. */
export interface MatchedSide {
  /** How the speed line runs at the top of the speeds; `null`: its map was not measured. */
  lineRuns: SlopeWord | null;
  /** Held against its own boosted pulls; `null`: it has none. */
  fit: Pick<MatchFit, 'residuals'> | null;
}

/** An honest-comparison badge: earned from data, or not, with what stands in the way. */
export interface Badge {
  id: 'like-for-like' | 'repeats' | 'same-day' | 'same-standard' | 'conditions-shown' | 'one-change';
  label: string;
  earned: boolean;
  /** Why, or why not, in a sentence. */
  why: string;
  /** The sentence in pieces, where it has figures. */
  parts?: SaidParts;
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
  badges: Badge[];
  /** What the rules say of the comparison and of its pulls, silenced ones too. */
  findings: Finding[];
  /** By key of the changed combination. */
  explanations: Explanation[];
  /** What was predicted, beside what came out. */
  predictions: { prediction: Prediction; measured: number | null; inside: boolean | null }[];
  remarks: Remark[];
}
