import { randomUUID } from 'node:crypto';
import type { CorrectionId } from '@pullbook/core/air';
import { OPEN_AUDIENCE } from '@pullbook/core/pull';
import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import type { Trial, TrialCombination, TrialPull } from '@pullbook/core/trial';
import type { Book } from '@pullbook/store';
import { findNamed, findPull } from './find-named.ts';
import type { PullHead } from './pull-views.ts';
import { settingsOf } from './settings.ts';
import { type TakenApartSaid, withTakenApart } from './taken-apart.ts';

export interface NewTrial {
  question: string;
  kind: Trial['kind'];
  /** The baseline first. Ids, beginnings of ids, or names. */
  combinations: { combinationId: string; shortName: string }[];
  /** Missing: told by the parts that changed. */
  takenApart?: TakenApartSaid | undefined;
  /** Missing: every pull of these combinations. */
  pullIds?: string[] | undefined;
  /** Missing: the shop's own. */
  correction?: CorrectionId | undefined;
}

/** Starts a trial in the book. Pulls go to the key of their combination; an aborted one stands as rejected. */
export async function startTrial(book: Book, wanted: NewTrial): Promise<Result<{ id: string }>> {
  if (wanted.question.trim() === '') {
    return refused(
      remark('refusal', 'no-question', 'A trial needs a question: one thing to find out, in a sentence.'),
    );
  }
  const named = await trialCombinations(book, wanted.combinations, wanted.kind);
  if (!named.ok) return named;
  const combinations = withTakenApart(named.value, wanted.takenApart ?? {});
  if (!combinations.ok) return combinations;
  const pulls = await trialPulls(book, combinations.value, wanted.pullIds);
  if (!pulls.ok) return pulls;
  const trial: Trial = {
    id: randomUUID(),
    question: wanted.question.trim(),
    kind: wanted.kind,
    combinations: combinations.value,
    pulls: pulls.value,
    correction: wanted.correction ?? (await settingsOf(book)).correction,
    averagesWindowRpm: null,
    remark: '',
    audience: OPEN_AUDIENCE,
    createdAt: new Date().toISOString(),
    invented: pulls.value.length > 0 && (await allInvented(book, pulls.value)),
  };
  await book.addTrial(trial);
  return accepted({ id: trial.id });
}

/** Combinations with their keys, `A` for the first. */
export async function trialCombinations(
  book: Book,
  wanted: NewTrial['combinations'],
  kind: Trial['kind'],
): Promise<Result<TrialCombination[]>> {
  if (wanted.length < 2 || wanted.length > 8) {
    return refused(
      remark(
        'refusal',
        'combinations-of-trial',
        `A ${kind} needs 2 to 8 combinations, the baseline first; ${wanted.length} given. A combination without a pull is allowed: the trial then says what is missing.`,
      ),
    );
  }
  const result: TrialCombination[] = [];
  for (const [index, one] of wanted.entries()) {
    const found = await findNamed(book, ['combination'], one.combinationId, 'combination');
    if (!found.ok) return found;
    const twice = result.find((other) => other.combinationId === found.value.id);
    if (twice) {
      return refused(
        remark(
          'refusal',
          'combination-twice',
          `"${found.value.name}" stands in the trial twice (${twice.key} and ${keyOf(index)}). Each needs another combination.`,
        ),
      );
    }
    result.push({
      key: keyOf(index),
      combinationId: found.value.id,
      shortName: one.shortName.trim() || found.value.name,
    });
  }
  return accepted(result);
}

/** Pulls of these combinations with their keys: those that are given, or all. */
export async function trialPulls(
  book: Book,
  combinations: TrialCombination[],
  given: string[] | undefined,
): Promise<Result<TrialPull[]>> {
  const keyFor = (head: PullHead): string | undefined =>
    combinations.find((one) => one.combinationId === head.combinationId)?.key;
  if (!given) {
    const heads = await book.pullHeadsWith(combinations.map((one) => one.combinationId));
    return accepted(heads.flatMap((head) => (keyFor(head) ? [roleOf(head, keyFor(head)!)] : [])));
  }
  const pulls: TrialPull[] = [];
  for (const id of given) {
    const found = await findPull(book, id);
    if (!found.ok) return found;
    const key = keyFor(found.value);
    if (!key) return refused(strayPull(found.value, combinations));
    pulls.push(roleOf(found.value, key));
  }
  return accepted(pulls);
}

/** The remark on a pull that belongs to none of a trial's combinations. */
export function strayPull(head: PullHead, combinations: TrialCombination[]) {
  const names = combinations.map((one) => `${one.key} ${one.shortName}`).join(', ');
  const state =
    head.combinationId === null ? 'belongs to no combination yet' : 'belongs to another combination';
  return remark(
    'refusal',
    'pull-of-other-combination',
    `Pull "${head.name}" ${state}; the trial has ${names}. Say what the pull was made with first (amend the pull), or leave it out.`,
  );
}

function roleOf(head: PullHead, key: string): TrialPull {
  return head.outcome === 'aborted'
    ? { pullId: head.id, key, role: 'rejected', reason: 'aborted in the cell' }
    : { pullId: head.id, key, role: 'counted', reason: null };
}

async function allInvented(book: Book, pulls: TrialPull[]): Promise<boolean> {
  return (await book.pullHeadsOf(pulls.map((one) => one.pullId))).every((head) => head.invented);
}

const keyOf = (index: number): string => String.fromCharCode('A'.charCodeAt(0) + index);
