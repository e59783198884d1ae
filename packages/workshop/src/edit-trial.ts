import type { CorrectionId } from '@pullbook/core/air';
import { planUnderKeys } from '@pullbook/core/plan';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import {
  checkedRunningOrder,
  type RunningOrder,
  type Trial,
  type TrialCombination,
  type TrialPull,
} from '@pullbook/core/trial';
import type { Book } from '@pullbook/store';
import { findPull, findTrial } from './find-named.ts';
import { onLatest } from './on-latest.ts';
import { refuse } from './refuse.ts';
import { type NewTrial, strayPull, trialCombinations } from './start-trial.ts';
import { keptTakenApart, type TakenApartSaid, withTakenApart } from './taken-apart.ts';

/** What is changed of a trial; missing: stays. */
export interface TrialEdit {
  question?: string | undefined;
  /** Into a survey or back: what is asked of the same pulls. */
  kind?: Trial['kind'] | undefined;
  correction?: CorrectionId | undefined;
  /** r/min; `null`: back to the common window */
  averagesWindowRpm?: [low: number, high: number] | null | undefined;
  remark?: string | undefined;
  combinations?: NewTrial['combinations'] | undefined;
  /** By the keys that the combinations have after the change. */
  takenApart?: TakenApartSaid | undefined;
  /** Pulls that join or change their role; the others stay. `left out` takes a pull out of the trial. */
  pulls?: PullEdit[] | undefined;
  /** How it is told step by step, whole; `null`: as worked out. */
  runningOrder?: RunningOrder | null | undefined;
}

export interface PullEdit {
  pullId: string;
  /** Missing: the key of its combination. */
  key?: string | undefined;
  role: TrialPull['role'] | 'left out';
  reason?: string | null | undefined;
}

/**
 * Changes a trial; the log keeps both sides with the reason. A rejected pull needs a reason of its own. The remarks say what
 * else went with the change: pulls of the kept plan, a word about the engine that held against another baseline.
 */
export async function editTrial(
  book: Book,
  id: string,
  edit: TrialEdit,
  reason: string,
  stamp?: string,
): Promise<Result<{ id: string }>> {
  const found = await findTrial(book, id);
  if (!found.ok) return found;
  return onLatest(book, `trial ${found.value.id}`, stamp, async (latest) => {
    const before = await book.trial(found.value.id);
    if (!before) return found;
    const after = await editedTrial(book, before, edit);
    if (!after.ok) return after;
    await book.changeTrial(after.value, reason, latest);
    return accepted({ id: before.id }, after.remarks);
  });
}

async function editedTrial(book: Book, before: Trial, edit: TrialEdit): Promise<Result<Trial>> {
  const kind = edit.kind ?? before.kind;
  if (edit.question !== undefined && edit.question.trim() === '') {
    return refuse('no-question', 'A trial needs a question: one thing to find out, in a sentence.');
  }
  const window = edit.averagesWindowRpm;
  if (window && !(window[0] > 0 && window[1] > window[0])) {
    return refuse(
      'averages-window',
      `A window from ${window[0]} to ${window[1]} r/min is not one. Give a lower and a higher engine speed.`,
    );
  }
  const combinations = await editedCombinations(book, before, edit, kind);
  if (!combinations.ok) return combinations;
  const pulls = await editedPulls(book, before, combinations.value, edit.pulls ?? []);
  if (!pulls.ok) return pulls;
  const order = edit.runningOrder == null ? null : checkedRunningOrder(edit.runningOrder);
  if (order?.ok === false) return order;
  const planned = rekeyedPlan(before, combinations.value);
  return accepted(
    {
      ...before,
      ...planned.changed,
      kind,
      question: edit.question?.trim() ?? before.question,
      correction: edit.correction ?? before.correction,
      averagesWindowRpm: window === undefined ? before.averagesWindowRpm : window,
      remark: edit.remark ?? before.remark,
      combinations: combinations.value,
      pulls: pulls.value,
      ...(edit.runningOrder === undefined ? {} : { runningOrder: order?.value ?? null }),
    },
    [...combinations.remarks, ...planned.remarks],
  );
}

async function editedCombinations(
  book: Book,
  before: Trial,
  { combinations, takenApart }: TrialEdit,
  kind: Trial['kind'],
): Promise<Result<TrialCombination[]>> {
  const named = combinations
    ? await trialCombinations(book, combinations, kind)
    : accepted(before.combinations);
  if (!named.ok) return named;
  const kept = keptTakenApart(before, named.value);
  if (!kept.ok) return kept;
  const said = withTakenApart(kept.value, takenApart ?? {});
  return said.ok && takenApart === undefined ? accepted(said.value, kept.remarks) : said;
}

async function editedPulls(
  book: Book,
  before: Trial,
  combinations: TrialCombination[],
  edits: PullEdit[],
): Promise<Result<TrialPull[]>> {
  let pulls = rekeyed(before, combinations);
  for (const edit of edits) {
    const found = await findPull(book, edit.pullId);
    if (!found.ok) return found;
    const { id, combinationId, name } = found.value;
    const others = pulls.filter((one) => one.pullId !== id);
    if (edit.role === 'left out') {
      pulls = others;
      continue;
    }
    const key = combinations.find((one) => one.combinationId === combinationId)?.key;
    if (!key) return refused(strayPull(found.value, combinations));
    if (edit.key !== undefined && edit.key !== key) {
      return refuse('key-of-pull', `Pull "${name}" was made with ${key}, not ${edit.key}.`);
    }
    const why = edit.reason?.trim() || null;
    if (edit.role === 'rejected' && why === null) {
      return refuse(
        'no-reason',
        `Pull "${name}" can only be rejected with a reason. It stays visible with it.`,
      );
    }
    const changed = { pullId: id, key, role: edit.role, reason: why };
    const place = pulls.findIndex((one) => one.pullId === id);
    pulls = place < 0 ? [...others, changed] : pulls.with(place, changed);
  }
  return accepted(pulls);
}

/** Pulls follow their combination to its new key; pulls of a combination that left, leave. */
function rekeyed(before: Trial, combinations: TrialCombination[]): TrialPull[] {
  return before.pulls.flatMap((pull) => {
    const key = keyNow(before, combinations, pull.key);
    return key ? [{ ...pull, key }] : [];
  });
}

/** The plan with its pulls under the keys of now; nothing where there is none. */
function rekeyedPlan(
  before: Trial,
  combinations: TrialCombination[],
): { changed: Pick<Trial, 'plan'>; remarks: Remark[] } {
  const { plan } = before;
  if (plan == null) return { changed: {}, remarks: [] };
  const now = planUnderKeys(plan, (key) => keyNow(before, combinations, key));
  const gone = plan.pulls.length - (now?.pulls.length ?? 0);
  const rest = now === null ? 'Nothing is left of it' : `${now.pulls.length} are left`;
  const remarks = [
    remark(
      'caution',
      'planned-pulls-gone',
      `${gone} of the ${plan.pulls.length} planned pulls were of a combination that left the trial; they are out of the plan. ${rest}: make the plan anew.`,
    ),
  ];
  return { changed: { plan: now }, remarks: gone === 0 ? [] : remarks };
}

function keyNow(before: Trial, combinations: TrialCombination[], key: string): string | undefined {
  const combinationId = before.combinations.find((one) => one.key === key)?.combinationId;
  return combinations.find((one) => one.combinationId === combinationId)?.key;
}
