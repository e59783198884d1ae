import { type Combination, isSupercharged } from '@pullbook/core/combination';
import type { ComparedCombination, Comparison, Gain } from '@pullbook/core/compare';
import type { Pull, PullView } from '@pullbook/core/pull';
import type { Trial, TrialAnswer } from '@pullbook/core/trial';
import type { ViewOptions } from './model.ts';
import { type Showing, showingIn } from './showing.ts';

/** A pull of the trial with what the trial says of it. */
export interface PullInTrial {
  key: string;
  role: 'counted' | 'rejected' | 'warm-up';
  reason: string | null;
  pull: Pull;
  view: PullView;
}

/** One combination of the trial with its place in the palette and its figures. */
export interface CombinationInTrial {
  key: string;
  shortName: string;
  /** Place in the trial: the colour and dash it has on every page of it. */
  index: number;
  combination: Combination | null;
  /** `null`: no counted pull. */
  figures: ComparedCombination | null;
  pulls: PullInTrial[];
  counted: PullInTrial[];
  supercharged: boolean;
}

/** A trial's answer laid out for the views: they all start from here. */
export interface TrialInView {
  trial: Trial;
  state: TrialAnswer['state'];
  answer: TrialAnswer;
  comparison: Comparison | null;
  combinations: CombinationInTrial[];
  baseline: CombinationInTrial;
  missing: CombinationInTrial[];
  /** Against the trial's own baseline; empty unless the trial is answered. */
  gains: { gain: Gain; changed: CombinationInTrial }[];
  show: Showing;
}

export function trialInView(answer: TrialAnswer, options: ViewOptions): TrialInView {
  const { trial, comparison } = answer;
  const pulls = trial.pulls.flatMap((named): PullInTrial[] => {
    const pull = answer.pulls.get(named.pullId);
    const view = answer.views.get(named.pullId);
    return pull && view ? [{ key: named.key, role: named.role, reason: named.reason, pull, view }] : [];
  });
  const combinations = trial.combinations.map((named, index): CombinationInTrial => {
    const combination = answer.combinations.get(named.combinationId) ?? null;
    const own = pulls.filter((pull) => pull.key === named.key);
    return {
      key: named.key,
      shortName: named.shortName,
      index,
      combination,
      figures: comparison?.combinations.find((compared) => compared.key === named.key) ?? null,
      pulls: own,
      counted: own.filter((pull) => pull.role === 'counted'),
      supercharged: combination !== null && isSupercharged(combination.sheet),
    };
  });
  const baseline = combinations[0];
  if (!baseline) throw new Error(`Trial ${trial.id} has no combination.`);
  const missingKeys = new Set(answer.missing.map((combination) => combination.key));
  return {
    trial,
    state: answer.state,
    answer,
    comparison,
    combinations,
    baseline,
    missing: combinations.filter((combination) => missingKeys.has(combination.key)),
    gains: answer.state === 'answered' && comparison ? gainsOver(comparison, baseline, combinations) : [],
    show: showingIn(options),
  };
}

function gainsOver(
  comparison: Comparison,
  baseline: CombinationInTrial,
  combinations: CombinationInTrial[],
): TrialInView['gains'] {
  return comparison.gains.flatMap((gain) => {
    const changed = combinations.find((combination) => combination.key === gain.changedKey);
    return changed && gain.baselineKey === baseline.key ? [{ gain, changed }] : [];
  });
}

/** The counted pulls of all combinations. */
export function countedPulls(view: TrialInView): PullInTrial[] {
  return view.combinations.flatMap((combination) => combination.counted);
}

/** Key and short name together: `B, 12° longer cam`. */
export function fullName({ key, shortName }: { key: string; shortName: string }): string {
  return shortName ? `${key}, ${shortName}` : key;
}

/** The same before its verb: `B, longer cam, adds …`, `B adds …`. */
export function asSubject(of: { key: string; shortName: string }): string {
  return of.shortName ? `${fullName(of)},` : of.key;
}

/** Whether anything of the trial is invented. */
export function isInvented(view: TrialInView): boolean {
  return (
    view.trial.invented || view.combinations.some(({ pulls }) => pulls.some(({ pull }) => pull.invented))
  );
}
