import { countsByKey, pullsLeft } from '@pullbook/core/plan';
import type { TrialInView } from './trial-in-view.ts';

/** A pull of the kept plan that is still to make. */
export interface PlannedRow {
  key: string;
  /** Its place in the palette. */
  combination: number;
  /** `planned: B, pull 5 of 8` */
  text: string;
}

/** What is still to make of the plan that is kept with the trial, in its order; empty: all is made, or nothing planned. */
export function plannedPulls({ trial, combinations }: TrialInView): PlannedRow[] {
  if (trial.plan == null) return [];
  const counted = countsByKey(combinations.flatMap((one) => one.counted));
  return pullsLeft(trial.plan, counted).map(({ key, order }) => ({
    key,
    combination: Math.max(
      0,
      combinations.findIndex((one) => one.key === key),
    ),
    text: `planned: ${key}, pull ${order} of ${trial.plan!.pulls.length}`,
  }));
}
