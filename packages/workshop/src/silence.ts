import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import { RULES, ruleNamed, type Silenced } from '@pullbook/core/rule';
import type { Book } from '@pullbook/store';
import { findNamed } from './find-named.ts';
import { findOne } from './find-one.ts';

/** Things a rule can be silenced for. */
export const SILENCED_KINDS = ['pull', 'trial', 'combination', 'session'] as const;
export type SilencedKind = (typeof SILENCED_KINDS)[number];

export interface ToSilence {
  /** `V13` */
  rule: string;
  kind: SilencedKind;
  /** Id, its beginning, or a name. */
  given: string;
  reason: string;
}

/** Silences a rule for one thing: what it says there stays to be read, with the reason. In the log, and undone like every act. */
export async function silenceRule(book: Book, asked: ToSilence): Promise<Result<Silenced>> {
  const found = await ruleAndSubject(book, asked);
  if (!found.ok) return found;
  const reason = asked.reason.trim();
  if (reason === '')
    return refused(
      remark(
        'refusal',
        'no-reason',
        'Silencing needs a reason: what is known of the thing that the rule does not know.',
      ),
    );
  return accepted(await book.silence({ ...found.value, reason, at: new Date().toISOString() }));
}

/** Lets a silenced rule speak again. */
export async function letRuleSpeak(book: Book, asked: ToSilence): Promise<Result<Silenced>> {
  const found = await ruleAndSubject(book, asked);
  if (!found.ok) return found;
  const { ruleId, subject } = found.value;
  const silenced = (await book.silenced([subject])).find((one) => one.ruleId === ruleId);
  if (silenced === undefined)
    return refused(
      remark(
        'refusal',
        'not-silenced',
        `${ruleId} is not silenced for that ${asked.kind}: it speaks already.`,
      ),
    );
  await book.letSpeak(silenced.id, asked.reason.trim());
  return accepted(silenced);
}

async function ruleAndSubject(
  book: Book,
  { rule, kind, given }: ToSilence,
): Promise<Result<{ ruleId: string; subject: string }>> {
  const known = ruleNamed(rule);
  if (known === null)
    return refused(
      remark(
        'refusal',
        'unknown-rule',
        `There is no rule "${rule}". They go from V01 to ${RULES.at(-1)!.id}: "pullbook rules" lists them.`,
      ),
    );
  const found =
    kind === 'session'
      ? findOne(await book.sessions(), given, 'session')
      : await findNamed(book, [kind], given, kind);
  return found.ok ? accepted({ ruleId: known.id, subject: `${kind} ${found.value.id}` }) : found;
}
