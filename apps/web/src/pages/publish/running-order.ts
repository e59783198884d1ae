import type { RunningOrder } from '@pullbook/core/trial';
import type { ShownRunningOrder, ShownStep } from '@pullbook/views/publish';

/** A running order as its editor holds it; seconds as typed. */
export interface OrderDraft {
  steps: StepDraft[];
  speed: number;
}

export interface StepDraft extends Omit<ShownStep, 'seconds'> {
  seconds: string;
}

/** Speeds to choose from; what is kept beside them is offered too. */
export const SPEEDS: readonly number[] = [0.5, 0.75, 1, 1.25, 1.5, 2];

export const draftOf = ({ steps, speed }: ShownRunningOrder): OrderDraft => ({
  steps: steps.map((step) => ({ ...step, seconds: String(step.seconds) })),
  speed,
});

/** With the step at `from` one place further up or down; unchanged where there is no such place. */
export function movedStep(draft: OrderDraft, from: number, by: -1 | 1): OrderDraft {
  const step = draft.steps[from];
  const to = from + by;
  if (step === undefined || to < 0 || to >= draft.steps.length) return draft;
  return { ...draft, steps: draft.steps.toSpliced(from, 1).toSpliced(to, 0, step) };
}

export const changedStep = (draft: OrderDraft, place: number, change: Partial<StepDraft>): OrderDraft => ({
  ...draft,
  steps: draft.steps.map((step, at) => (at === place ? { ...step, ...change } : step)),
});

/** Steps with something to show whose seconds are no time; they cannot be kept. */
export const stepsWithoutSeconds = ({ steps }: OrderDraft): StepDraft[] =>
  steps.filter(({ whyNot, seconds }) => whyNot === '' && !(secondsFrom(seconds) > 0));

const secondsFrom = (typed: string): number => Number(typed.trim().replace(',', '.'));

/** What is kept: a title or a time that stands as worked out is not, so that it follows the answer. */
export const orderFrom = ({ steps, speed }: OrderDraft): RunningOrder => ({
  speed,
  steps: steps.map(({ id, isShown, title, ownTitle, seconds, ownSeconds }) => ({
    id,
    isShown,
    title: title.trim() === '' || title.trim() === ownTitle ? null : title.trim(),
    seconds: secondsFrom(seconds) === ownSeconds ? null : secondsFrom(seconds),
  })),
});

/** Whether two drafts would be kept alike. */
export const sameOrder = (one: OrderDraft, other: OrderDraft): boolean =>
  JSON.stringify(orderFrom(one)) === JSON.stringify(orderFrom(other));
