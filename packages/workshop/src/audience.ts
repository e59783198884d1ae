import { type Audience, audienceOn } from '@pullbook/core/pull';
import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import { dayFromText, todayHere } from './edge/day-text.ts';
import { isUnknown } from './edge/quantity-text.ts';
import { findNamed } from './find-named.ts';
import { onLatest } from './on-latest.ts';

/** Who may see a thing, as a person says it; missing: stays. */
export interface AudienceText {
  who?: string | undefined;
  /** `2026-05-03`; `null` or '': no embargo */
  notBefore?: string | null | undefined;
}

const WHO: readonly Audience['who'][] = ['shop', 'customer', 'everyone'];

/** Says who may see a pull or a trial outside the book; the log keeps both sides. `stamp`: of what was looked at. */
export async function setAudience(
  book: Book,
  given: string,
  text: AudienceText,
  reason: string,
  stamp?: string,
): Promise<Result<{ kind: 'pull' | 'trial'; id: string; audience: Audience }>> {
  const found = await findNamed(book, ['trial', 'pull'], given, 'pull or trial');
  if (!found.ok) return found;
  const { id, kind } = found.value;
  const why = reason.trim() || 'who may see it';
  return onLatest(book, `${kind} ${id}`, stamp, async (latest) => {
    const trial = kind === 'trial' ? await book.trial(id) : null;
    const [pull] = trial ? [] : await book.pullHeadsOf([id]);
    const audience = audienceFrom((trial ?? pull!).audience, text);
    if (!audience.ok) return audience;
    if (trial) await book.changeTrial({ ...trial, audience: audience.value }, why, latest);
    else await book.amendPull(id, { audience: audience.value }, why, latest);
    return accepted({ kind, id, audience: audience.value });
  });
}

function audienceFrom(before: Audience, { who, notBefore }: AudienceText): Result<Audience> {
  const chosen = who === undefined ? before.who : WHO.find((one) => one === who.trim().toLowerCase());
  if (who === undefined && notBefore === undefined) {
    return refused(
      remark('refusal', 'no-audience', `Say who may see it: ${WHO.join(', ')}; or from which day on.`),
    );
  }
  if (!chosen) {
    return refused(
      remark(
        'refusal',
        'unknown-audience',
        `"${who}" is nobody Pullbook knows. Accepted: shop (never leaves it), customer (for whose engine it is), everyone.`,
      ),
    );
  }
  const day = notBeforeFrom(before, notBefore);
  return day.ok ? accepted({ who: chosen, notBefore: day.value }) : day;
}

function notBeforeFrom(before: Audience, given: string | null | undefined): Result<string | null> {
  if (given === undefined) return accepted(before.notBefore);
  return isUnknown(given) || given.trim().toLowerCase() === 'none'
    ? accepted(null)
    : dayFromText(given, 'Not before');
}

/** The thing as it stands today: an embargo whose day has come is none. */
export function asOfToday<T extends { audience: Audience }>(thing: T): T {
  return { ...thing, audience: audienceOn(thing.audience, todayHere()) };
}
