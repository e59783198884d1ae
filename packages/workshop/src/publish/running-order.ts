import { accepted, type Result } from '@pullbook/core/remark';
import { checkedRunningOrder, type RunningOrder, STEP_IDS, type StepChoice } from '@pullbook/core/trial';
import type { Book } from '@pullbook/store';
import type { ViewOptions } from '@pullbook/views';
import type { ShownRunningOrder } from '@pullbook/views/publish';
import { editTrial } from '../edit-trial.ts';
import { findTrial } from '../find-named.ts';
import { answerWithMatch } from '../match/answer-with-match.ts';
import { refuse } from '../refuse.ts';

/** What is changed of a running order; what is not named stays. */
export interface OrderChange {
  show?: readonly string[] | undefined;
  hide?: readonly string[] | undefined;
  /** In this order, before all that are not named. */
  first?: readonly string[] | undefined;
  /** By step; '': as worked out again. */
  titles?: Readonly<Record<string, string>> | undefined;
  /** s, by step; `null`: as worked out again. */
  seconds?: Readonly<Record<string, number | null>> | undefined;
  speed?: number | undefined;
  /** Everything as worked out, before what else is said. */
  afresh?: boolean | undefined;
}

/** How a trial is told step by step, as it would be shown now. */
export async function runningOrderOf(
  book: Book,
  trialId: string,
  options: ViewOptions,
): Promise<Result<ShownRunningOrder>> {
  const found = await findTrial(book, trialId);
  if (!found.ok) return found;
  const { shownRunningOrder } = await import('@pullbook/views/publish');
  return accepted(shownRunningOrder(await answerWithMatch(book, found.value), options));
}

/** Changes how a trial is told; kept with the trial, in the log with its reason. */
export async function changeRunningOrder(
  book: Book,
  trialId: string,
  change: OrderChange,
  reason: string,
): Promise<Result<{ id: string }>> {
  const found = await findTrial(book, trialId);
  if (!found.ok) return found;
  const before = change.afresh === true ? null : (found.value.runningOrder ?? null);
  const order = changedOrder(before, change);
  if (!order.ok) return order;
  const { afresh, ...rest } = change;
  const isPlain = afresh === true && Object.values(rest).every((said) => said === undefined);
  return editTrial(book, found.value.id, { runningOrder: isPlain ? null : order.value }, reason);
}

function changedOrder(before: RunningOrder | null, change: OrderChange): Result<RunningOrder> {
  const { show = [], hide = [], first = [], titles = {}, seconds = {}, speed = before?.speed ?? 1 } = change;
  const named = [...show, ...hide, ...first, ...Object.keys(titles), ...Object.keys(seconds)];
  const stray = named.find((id) => !(STEP_IDS as readonly string[]).includes(id));
  if (stray !== undefined)
    return refuse('unknown-step', `"${stray}" is not a step. The steps are ${STEP_IDS.join(', ')}.`);
  const both = show.find((id) => hide.includes(id));
  if (both !== undefined)
    return refuse('shown-and-hidden', `"${both}" is to be shown and hidden. Give one of them.`);
  // All of them: one that is not named would go behind those that are.
  const places = [...new Set([...first, ...(before?.steps ?? []).map(({ id }) => id), ...STEP_IDS])];
  const steps = places.map((id) => {
    const was: StepChoice | undefined = before?.steps.find((step) => step.id === id);
    return {
      id,
      isShown: show.includes(id) || (!hide.includes(id) && (was?.isShown ?? true)),
      title: titles[id] ?? was?.title ?? null,
      seconds: seconds[id] === undefined ? (was?.seconds ?? null) : seconds[id],
    };
  });
  return checkedRunningOrder({ steps, speed });
}
