import type { Combination } from '../combination/index.ts';
import type { Comparison } from '../compare/index.ts';
import type { Pull, PullView } from '../pull/index.ts';
import type { Remark } from '../remark/index.ts';
import {
  type Finding,
  findingsOfComparison,
  findingsOfPull,
  type RuleThresholds,
  type Silenced,
  withSilenced,
} from '../rule/index.ts';
import type { MatchedSide, Trial } from './model.ts';

interface RuledTrial {
  trial: Trial;
  comparison: Comparison | null;
  pulls: ReadonlyMap<string, Pull>;
  views: ReadonlyMap<string, PullView>;
  combinations: ReadonlyMap<string, Combination>;
  /** What is said of the change beside the comparison. */
  remarks: readonly Remark[];
  silenced: readonly Silenced[];
  thresholds: RuleThresholds;
  matched: ReadonlyMap<string, MatchedSide>;
}

/** What the rules say of a trial's comparison and of each pull that counts in it, silenced ones last. */
export function findingsOfTrial(of: RuledTrial): Finding[] {
  const { trial, comparison, pulls, views, combinations, remarks, silenced, thresholds, matched } = of;
  const counted = trial.pulls.filter(({ role }) => role === 'counted');
  const ofPulls = counted.flatMap(({ pullId, key }) => {
    const pull = pulls.get(pullId);
    const view = views.get(pullId);
    if (pull === undefined || view === undefined) return [];
    const sheet = combinations.get(pull.combinationId ?? '')?.sheet ?? null;
    return findingsOfPull(pull, view, { sheet, thresholds, fit: matched.get(key)?.fit ?? null });
  });
  const ofAll =
    comparison === null || trial.kind === 'survey'
      ? []
      : findingsOfComparison(comparison, { subject: `trial ${trial.id}`, pulls, remarks, thresholds });
  return withSilenced([...ofAll, ...ofPulls], silenced);
}
