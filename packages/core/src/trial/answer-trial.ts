import { type Combination, type PartChange, whatChanged } from '../combination/index.ts';
import { type ComparedInput, type Comparison, compareCombinations, countedPulls } from '../compare/index.ts';
import {
  cellNamed,
  cellRemarks,
  defaultRecipe,
  type Pull,
  type PullView,
  type ShopReading,
  SILENT_SHOP,
  viewPull,
} from '../pull/index.ts';
import type { Remark } from '../remark/index.ts';
import { badgesOf } from './badges.ts';
import { changeRemarks } from './change-remarks.ts';
import { explanationsOf } from './explanations.ts';
import { findingsOfTrial } from './findings-of-trial.ts';
import { keptOnTheBrake } from './kept-on-the-brake.ts';
import type { AnswerInput, Trial, TrialAnswer } from './model.ts';
import { predictionsOfTrial } from './predictions-of-trial.ts';
import { pullRemarks } from './pull-remarks.ts';

/**
 * A trial from its pulls to its answer: every pull viewed in the trial's standard, counted pulls compared, what changed in
 * hardware from the baseline `A`, and what stands in the way of an answer. A survey sets figures side by side and claims no
 * gain. Without a counted pull of the baseline the other combinations are still compared, without a gain.
 */
export function answerTrial({
  trial,
  combinations,
  packages,
  pulls,
  shop = SILENT_SHOP,
  viewed = viewPull,
  predictions = [],
  silenced = [],
  ruleThresholds = {},
  history = null,
  worthwhile,
  matched = new Map(),
}: AnswerInput): TrialAnswer {
  const pullById = new Map(pulls.map((pull) => [pull.id, pull]));
  const combinationById = new Map(combinations.map((combination) => [combination.id, combination]));
  const recipe = defaultRecipe(trial.correction);
  const views = new Map(
    trial.pulls.flatMap(({ pullId }) => {
      const pull = pullById.get(pullId);
      return pull === undefined ? [] : [[pullId, viewed(pull, recipe, shop)] as const];
    }),
  );
  const inputs = comparedInputs(trial, pullById, views);
  const pulled = inputs.filter((input) => input.pulls.length > 0);
  const baseline = trial.combinations[0];
  const hasBaseline = pulled.some((input) => input.key === baseline?.key);
  const changes = trial.kind === 'survey' ? {} : changesFrom(trial, combinationById, packages);
  const comparison =
    pulled.length === 0
      ? null
      : compareCombinations(pulled, {
          viewed,
          averagesWindowRpm: trial.averagesWindowRpm,
          cells: shop.cells,
          beside: { combinations: combinationById, changes, pulls },
          baselineKey: trial.kind === 'survey' || !hasBaseline ? null : baseline!.key,
          history,
          worthwhile: trial.plan?.gainRatio ?? worthwhile,
          looksAt: trial.plan?.looksAt ?? null,
          keptOnTheBrake: trial.kind === 'survey' ? [] : keptOnTheBrake(trial, changes),
        });
  return {
    trial,
    state: stateOf(trial, pulled, hasBaseline, comparison),
    missing: trial.combinations.filter(({ key }) => !pulled.some((input) => input.key === key)),
    comparison,
    views,
    pulls: new Map(
      trial.pulls.flatMap(({ pullId }) => (pullById.has(pullId) ? [[pullId, pullById.get(pullId)!]] : [])),
    ),
    combinations: combinationById,
    changes,
    badges: badgesOf({ comparison, changes, counted: countedPulls(pulled) }),
    findings: findingsOfTrial({
      trial,
      comparison,
      pulls: pullById,
      views,
      combinations: combinationById,
      remarks: changeRemarks(trial, combinationById, changes),
      silenced,
      thresholds: ruleThresholds,
      matched,
    }),
    explanations: explanationsOf({
      trial,
      comparison,
      changes,
      combinations: combinationById,
      pulls: pullById,
      matched,
    }),
    predictions: predictionsOfTrial(predictions, comparison),
    remarks: [
      ...pullRemarks(trial, pullById),
      ...changeRemarks(trial, combinationById, changes),
      ...(comparison?.remarks ?? []),
      ...calibrationRemarks(inputs, shop),
    ],
  };
}

/** Counted pulls made with an instrument whose calibration was not in force; those it is alike of are named together. */
function calibrationRemarks(inputs: readonly ComparedInput[], { cells }: ShopReading): Remark[] {
  const namesOf = new Map<string, { remark: Remark; names: string[] }>();
  for (const { pull } of inputs.flatMap((input) => input.pulls)) {
    for (const one of cellRemarks(pull, cellNamed(cells, pull.cell))) {
      if (one.code !== 'calibration-not-in-force') continue;
      const known = namesOf.get(one.message) ?? { remark: one, names: [] };
      namesOf.set(one.message, { ...known, names: [...known.names, pull.name] });
    }
  }
  return [...namesOf.values()].map(({ remark, names }) => ({
    ...remark,
    message: `${names.join(', ')}: ${remark.message}`,
  }));
}

function comparedInputs(
  trial: Trial,
  pullById: ReadonlyMap<string, Pull>,
  views: ReadonlyMap<string, PullView>,
): ComparedInput[] {
  return trial.combinations.map(({ key, combinationId }) => ({
    key,
    combinationId,
    pulls: trial.pulls.flatMap((named) => {
      const pull = pullById.get(named.pullId);
      return named.key === key && named.role === 'counted' && pull !== undefined
        ? [{ pull, view: views.get(named.pullId)! }]
        : [];
    }),
  }));
}

function stateOf(
  trial: Trial,
  pulled: readonly ComparedInput[],
  hasBaseline: boolean,
  comparison: Comparison | null,
): TrialAnswer['state'] {
  if (pulled.length === 0) return 'no pulls';
  if (trial.kind === 'survey') return 'survey';
  if (!hasBaseline) return 'no baseline';
  if (pulled.length === 1) return 'one combination';
  return comparison !== null && comparison.gains.length > 0 ? 'answered' : 'no common window';
}

function changesFrom(
  trial: Trial,
  combinationById: ReadonlyMap<string, Combination>,
  packages: AnswerInput['packages'],
): Record<string, PartChange[]> {
  const [first, ...others] = trial.combinations;
  const before = combinationById.get(first?.combinationId ?? '');
  if (before === undefined) return {};
  return Object.fromEntries(
    others.flatMap(({ key, combinationId }) => {
      const after = combinationById.get(combinationId);
      if (after === undefined) return [];
      // A package on both sides did not come or go: what changed inside it is told part by part.
      const moved = packages.filter(
        ({ id }) => before.packageIds.includes(id) !== after.packageIds.includes(id),
      );
      return [[key, whatChanged(before.sheet, after.sheet, moved)]];
    }),
  );
}
