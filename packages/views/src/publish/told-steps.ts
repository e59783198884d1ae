import { STEP_IDS, type StepChoice, type StepId, type Trial } from '@pullbook/core/trial';
import type { TrialInView } from '../trial-in-view.ts';
import type { OwnStep } from './own-step.ts';
import { ownSteps } from './steps.ts';

/** A step as it is told: as worked out, and what a person made of it. */
export interface ToldStep {
  own: OwnStep;
  isShown: boolean;
  title: string;
  /** s, at the running order's speed of 1 */
  seconds: number;
}

/** The steps in the order in which they are told; those that the order does not name come after, as worked out. */
export function toldSteps(view: TrialInView): { steps: ToldStep[]; speed: number } {
  const order = view.trial.runningOrder ?? null;
  const choices = new Map((order?.steps ?? []).map((choice) => [choice.id, choice]));
  const own = new Map(ownSteps(view).map((step) => [step.id, step]));
  return {
    steps: orderedIds(order).map((id) => toldStep(own.get(id)!, choices.get(id))),
    speed: order?.speed ?? 1,
  };
}

function orderedIds(order: Trial['runningOrder'] | null): StepId[] {
  return [...new Set([...(order?.steps ?? []).map(({ id }) => id), ...STEP_IDS])];
}

const toldStep = (own: OwnStep, choice: StepChoice | undefined): ToldStep => ({
  own,
  isShown: choice?.isShown ?? true,
  title: choice?.title ?? own.picture?.headline ?? '',
  seconds: choice?.seconds ?? own.seconds,
});
