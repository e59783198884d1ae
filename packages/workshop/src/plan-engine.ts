import { type PlannedEngine, plannedEngine, togetherOnOneCard } from '@pullbook/core/plan';
import type { TrialAnswer } from '@pullbook/core/trial';

/** What the sheets of a trial and its pulls so far say of the engine, for the card of limits. */
export function engineOfPlan({ trial, combinations, pulls, views, predictions }: TrialAnswer): PlannedEngine {
  const engines = trial.combinations.flatMap(({ key, combinationId }) => {
    const combination = combinations.get(combinationId);
    if (combination === undefined) return [];
    const own = [...pulls.values()].filter((pull) => pull.combinationId === combinationId);
    const seen = own.flatMap(({ id }) => views.get(id) ?? []);
    const boosts = seen.flatMap(({ curve }) => [...(curve?.channels.get('boost') ?? [])]);
    const foretold = predictions.flatMap(({ prediction }) =>
      prediction.key === key && prediction.what === 'highestBoost' ? [prediction.high] : [],
    );
    const speeds = seen.flatMap(({ window }) => (window === null ? [] : [window.windowRpm[1]]));
    return [
      plannedEngine(combination.sheet, {
        highestBoost: highestOf(boosts.filter((one) => Number.isFinite(one))),
        boostForetold: highestOf(foretold),
        highestSpeedRpm: highestOf(speeds),
      }),
    ];
  });
  return togetherOnOneCard(engines);
}

const highestOf = (values: readonly number[]): number | null =>
  values.length === 0 ? null : values.reduce((most, one) => Math.max(most, one));
