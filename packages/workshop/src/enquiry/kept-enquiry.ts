import type { Enquiry } from '@pullbook/core/reach';
import { accepted, type Result } from '@pullbook/core/remark';
import type { Book, LogEntry } from '@pullbook/store';
import type { KeptEnquiry, NamedSource } from '@pullbook/views/reach';
import { findNamed } from '../find-named.ts';
import { logSinceAsked } from './log-since.ts';
import { noLongerSo } from './no-longer-so.ts';

/** The enquiry a person means, by its id, the beginning of one, or its question. */
export async function findEnquiry(book: Book, given: string): Promise<Result<Enquiry>> {
  const found = await findNamed(book, ['enquiry'], given, 'enquiry');
  return found.ok ? accepted((await book.enquiry(found.value.id))!) : found;
}

/** A kept enquiry with all that its page needs: the answer as it was given, and what is no longer so. `stamp`: for a change made of it. */
export async function enquiryOf(book: Book, given: string): Promise<Result<KeptEnquiry & { stamp: string }>> {
  const found = await findEnquiry(book, given);
  if (!found.ok) return found;
  const stamp = await book.stamp(`enquiry ${found.value.id}`);
  const enquiry = (await book.enquiry(found.value.id)) ?? found.value;
  const since = await logSinceAsked(book, [enquiry.id]);
  return accepted({ ...(await keptEnquiry(book, enquiry, since.get(enquiry.id) ?? [])), stamp });
}

/** An enquiry with the names of today of what it rests on. `since`: the log after it was asked. */
export async function keptEnquiry(
  book: Book,
  enquiry: Enquiry,
  since: readonly LogEntry[],
): Promise<KeptEnquiry> {
  const combination = await book.combination(enquiry.combinationId);
  return {
    enquiry,
    combination: 0,
    isInvented: combination?.invented ?? false,
    sources: await sourcesOf(book, enquiry),
    remarks: await noLongerSo(book, enquiry, combination, since),
  };
}

async function sourcesOf(
  book: Book,
  { combinationId, pullIds, answer, became }: Enquiry,
): Promise<NamedSource[]> {
  const named = (kind: 'pull' | 'combination' | 'trial', ids: readonly string[]) =>
    ids.map((id) => ({ kind, id, subject: `${kind} ${id}` }));
  const { near } = answer;
  const wanted = [
    ...named('pull', [...pullIds, ...near.flatMap((one) => one.pullIds)]),
    ...named('combination', [
      combinationId,
      ...near.map((one) => one.combinationId),
      ...became.map((one) => one.combinationId),
    ]),
    ...named(
      'trial',
      became.map((one) => one.trialId),
    ),
  ];
  const known = await book.subjects([...new Set(wanted.map(({ subject }) => subject))]);
  const sources = new Map<string, NamedSource>();
  for (const { kind, id, subject } of wanted) {
    const there = known.get(subject);
    if (there?.isThere) sources.set(subject, { kind, id, name: there.name });
  }
  return [...sources.values()];
}
