import type { PublicationKind } from '@pullbook/core/publication';
import { isOpen } from '@pullbook/core/pull';
import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import type { Trial, TrialAnswer } from '@pullbook/core/trial';
import type { Book } from '@pullbook/store';
import { heldBack, heldBackInBundle } from '@pullbook/views';
import { findTrial } from '../find-named.ts';
import { answerWithMatch } from '../match/answer-with-match.ts';
import type { Looking } from '../trial-answer.ts';

/** A trial's answer for people outside; refused where it has nothing to show, or holds what is not for everyone. */
export async function answerToPublish(
  book: Book,
  trialId: string,
  { privateToo, ...looking }: Looking & { privateToo?: boolean | undefined },
  kinds: readonly PublicationKind[] = ['still'],
): Promise<Result<TrialAnswer>> {
  const found = await findTrial(book, trialId);
  if (!found.ok) return found;
  const answer = await answerWithMatch(book, found.value, looking);
  const trouble = nothingToShow(found.value, answer, kinds);
  if (trouble !== null) return refused(remark('refusal', 'nothing-to-publish', trouble));
  const held = heldBack(answer);
  const told = held.length === 0 ? withoutPrivate(answer) : answer;
  const all = kinds.includes('bundle') ? [...held, ...heldBackInBundle(answer)] : held;
  if (privateToo === true || all.length === 0) return accepted(told);
  return refused(
    remark(
      'refusal',
      'not-for-everyone',
      `What is not for everyone would leave the shop with it: ${all.join(' ')} Open it first, or ask for it all the same (--private-too, or the tick on the page): it then says "Not for publication" itself.`,
    ),
  );
}

/** A bundle carries a trial on to another book whatever it has; everything else shows its curves. */
function nothingToShow(
  { question, pulls }: Trial,
  { comparison }: TrialAnswer,
  kinds: readonly PublicationKind[],
): string | null {
  if (comparison || kinds.every((kind) => kind === 'bundle')) return null;
  if (pulls.length === 0)
    return `"${question}" has no pull yet, so there is no picture to publish. Add pulls to the trial first.`;
  return `"${question}" has no counted pull with a curve yet, so there is no picture to publish. Add pulls to the trial first, or let one of those that are in it count.`;
}

/** Without pulls that do not count and are not for everyone: not even their names go out. */
function withoutPrivate(answer: TrialAnswer): TrialAnswer {
  const { trial, pulls, views, findings } = answer;
  const isPrivate = (id: string): boolean =>
    pulls.get(id)?.audience !== undefined && !isOpen(pulls.get(id)!.audience);
  if (!trial.pulls.some(({ pullId }) => isPrivate(pullId))) return answer;
  const open = <Thing>(things: Map<string, Thing>) => new Map([...things].filter(([id]) => !isPrivate(id)));
  return {
    ...answer,
    trial: { ...trial, pulls: trial.pulls.filter(({ pullId }) => !isPrivate(pullId)) },
    pulls: open(pulls),
    views: open(views),
    findings: findings.filter(({ subject }) => !(subject.startsWith('pull ') && isPrivate(subject.slice(5)))),
  };
}
